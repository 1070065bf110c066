#include "room.inc"
#include "laundry.inc"
// behind the stair: x 0 to 90, z to 76; the stair's underside comes down from the left
box { <-2, -1, -90> <92, 0, 78> texture { Map("laundry/photos/floor-rust.jpg", 32, 24, 2, 1) finish { Satin } } }
box { <-4, 0, -90> <0, 100, 78> texture { Chalk } } box { <90, 0, -90> <94, 100, 78> texture { Chalk } } box { <-4, 0, 76> <94, 100, 80> texture { Chalk } }
box { <-4, 94, -90> <94, 98, 80> pigment { rgb <.78, .77, .73> } }
// machines under a birch counter
union { Machine(1) translate <17, 0, 74> } union { Machine(0) translate <46, 0, 74> }
#declare Birch = texture { Map("laundry/photos/counter-birch.jpg", 48, 36, 2, 0) finish { Satin } };
union { RB(<1, 39.4, 46>, <61.5, 41, 76>, .1) texture { Birch } }
box { <1, 39.5, 45.9> <61.5, 40.9, 46.1> pigment { gradient y color_map { [0 rgb <.55, .38, .22>] [.5 rgb <.55, .38, .22>] [.5 rgb <.72, .56, .36>] [1 rgb <.72, .56, .36>] } scale .46 } }
box { <61, 0, 47> <62, 39.4, 76> texture { Birch } }
// pegboard
difference { box { <2, 45, 75.2> <60, 74, 76> }
  #declare i = 0; #while (i < 29) #declare j = 0; #while (j < 14) cylinder { <3 + i * 2, 46.4 + j * 2, 70> <3 + i * 2, 46.4 + j * 2, 76> .16 } #declare j = j + 1; #end #declare i = i + 1; #end
  pigment { rgb <.60, .46, .28> } finish { Satin } }
box { <2, 45, 75.9> <60, 74, 76.1> pigment { rgb .05 } }
union { RB(<6, 58, 70>, <26, 59, 75.4>, .1) RB(<32, 64, 70>, <54, 65, 75.4>, .1) texture { Birch } }
#macro Jar(X, Y, C, h) union { cylinder { <X, Y, 72.6> <X, Y + h, 72.6> 1.7 } cylinder { <X, Y + h, 72.6> <X, Y + h + .8, 72.6> 1.75 pigment { rgb <.6, .45, .28> } } Enamel(C) } #end
Jar(9, 59, <.70, .68, .60>, 4) Jar(14, 59, <.30, .38, .32>, 3.2) Jar(18.6, 59, <.70, .68, .60>, 5) Jar(36, 65, <.05, .08, .12>, 4.4) Jar(41, 65, <.70, .66, .55>, 3.4)
// hanging: a brush, scissors loop, a roll of cord
union { torus { 2.2, .5 rotate x * 90 translate <36, 55, 74.6> pigment { rgb <.62, .56, .44> } normal { bumps 1 scale .2 } }
  union { RB(<44, 49, 73.6>, <46, 56, 74.8>, .4) box { <43.6, 47.4, 73.4> <46.4, 49.4, 75> } pigment { rgb <.45, .26, .12> } }
  union { cylinder { <52, 50, 74.4> <52, 61, 74.4> .4 } RB(<48.6, 46.5, 73.6>, <55.4, 50.5, 75>, .3) pigment { rgb <.62, .18, .08> } } }
// folded linen and a basket on the counter
#declare k = 0; #while (k < 5) object { RB(<8, 41 + k * 1.5, 52>, <24 - mod(k, 2) * .8, 42.45 + k * 1.5, 66>, .7) pigment { rgb (mod(k, 3) = 1 ? <.42, .50, .47> : <.72, .69, .62>) } finish { Flat } normal { bumps .6 scale .3 } } #declare k = k + 1; #end
difference { Slab(36, 56, 52, 68, 41, 49.4, 3, .3) Slab(36.6, 55.4, 52.6, 67.4, 41.6, 55, 2.6, .3) pigment { rgb <.50, .34, .17> } finish { Flat } normal { gradient y 1.6 sine_wave scale .55 } }
object { RB(<38, 44, 54>, <54, 51, 66>, 2.4) pigment { rgb <.72, .70, .64> } normal { bumps 1 scale 2.4 } }
// sink in the corner
union { difference { union { Slab(-12, 12, -17, -1, -8.5, 0, 2.2, .6) } intersection { Slab(-10.9, 10.9, -15.9, -2.6, -7.4, 5, 1.6, 1.2) box { <-20, -7.5, -30> <20, 4, 10> } } Enamel(<.82, .82, .79>) }
  union { RB(<-12, -2, -1.5>, <12, 9.4, 0>, .5) Enamel(<.82, .82, .79>) }
  union { cylinder { <-4, 5, -2.6> <4, 5, -2.6> .5 } cylinder { <-4, 5, -1> <-4, 5, -3.4> .6 } cylinder { <4, 5, -1> <4, 5, -3.4> .6 } cylinder { <-5.2, 5, -3.6> <-2.8, 5, -3.6> .2 } cylinder { <2.8, 5, -3.6> <5.2, 5, -3.6> .2 } sphere { <0, 5, -2.6> .8 }
    #declare PA = array[3] { <0, 5, -2.6>, <0, 4.6, -10>, <0, 2.6, -10.4> } Pipe(PA, .8, .42) cylinder { <0, -8.5, -9> <0, -20, -9> .8 } cylinder { <0, -20, -9> <0, -20, 0> .8 } texture { Chrome } }
  translate <76, 36, 76> }
// beadboard cupboards over
#macro Bead(x0, x1, y0, y1, zf) difference { RB(<x0, y0, zf>, <x1, y1, zf + .9>, .06)
  #local g = x0 + 2; #while (g < x1 - 1) cylinder { <g, y0 - 1, zf> <g, y1 + 1, zf> .13 } #local g = g + 2; #end texture { Trim } } #end
box { <2, 78, 62> <61, 93, 76> texture { Trim } }
Bead(2.1, 21.4, 78.2, 92.8, 61) Bead(21.6, 41.1, 78.2, 92.8, 61) Bead(41.3, 60.9, 78.2, 92.8, 61)
#declare k = 0; #while (k < 3) sphere { <19.6 + k * 19.6, 80.6, 60.3> .6 texture { Chrome } } #declare k = k + 1; #end
sphere { <46, 86, 14> 5 pigment { rgb <.95, .92, .86> } finish { ambient 0 diffuse .45 emission .6 * <1, .92, .78> } no_shadow } cylinder { <46, 90, 14> <46, 94, 14> 2.4 texture { Chrome } }
light_source { <46, 84, 14> rgb <1, .88, .70> * .26 area_light x * 9, z * 9, 4, 4 adaptive 1 jitter }
difference { box { <89.5, 46, 10> <91, 80, 44> pigment { rgb 1 } finish { diffuse 0 emission .9 * <.92, .97, 1> } } box { <0, 0, 0> <1, 1, 1> } }
SashX(89.4, 46, 80, 10, 44, 2, 2)
light_source { <86, 63, 27> rgb <.92, .97, 1> * .5 area_light y * 30, z * 30, 5, 5 adaptive 1 jitter }
light_source { <40, 80, -70> rgb <1, .98, .95> * .14 area_light x * 50, z * 40, 4, 4 adaptive 1 jitter }
Day(.8)
camera { location <42, 56, -62> look_at <45, 41, 70> right x * 4 / 3 up y angle 58 }
