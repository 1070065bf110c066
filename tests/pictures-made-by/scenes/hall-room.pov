#include "room.inc"
// the stair hall: x 0 to 84, looking back to the front door at z = 150; the stair climbs on the right
#declare Lime = texture { Map("hall/photos/wall-limewash.jpg", 90, 67.5, 0, 0) finish { Flat } };
#declare LimeX = texture { Map("hall/photos/wall-limewash.jpg", 90, 67.5, 1, 0) finish { Flat } };
box { <-2, -1, -120> <120, 0, 152> texture { Map("hall/photos/floor-encaustic.jpg", 32, 24, 2, 0) finish { Satin } } }
box { <-4, 0, -120> <0, 120, 152> texture { LimeX } } box { <84, 0, -120> <88, 220, 152> texture { LimeX } }
difference { box { <-4, 0, 150> <90, 220, 156> texture { Lime } } box { <6, 0, 140> <46, 104, 160> texture { Trim } } }
box { <-4, 118, -120> <44, 122, 152> pigment { rgb <.78, .77, .73> } } box { <44, 218, -120> <90, 222, 152> pigment { rgb <.78, .77, .73> } } box { <42, 118, -120> <46, 220, 152> texture { LimeX } }
// front door, a light over it
#declare Door = texture { pigment { rgb <.36, .19, .03> } finish { ambient 0 diffuse .75 specular .3 roughness .02 reflection { .01, .4 fresnel on } } };
union { difference { box { <2, 0, 148.6> <50, 108, 150> } box { <6.5, -1, 140> <45.5, 103.6, 160> } } box { <6, 84, 149> <46, 87, 153> } texture { Trim } }
union { difference { box { <8, .6, 151.2> <44, 83.6, 153> } box { <12, 46, 140> <24.8, 79, 160> } box { <27.2, 46, 140> <40, 79, 160> } box { <12.5, 8, 150> <24.8, 40, 151.7> } box { <27.2, 8, 150> <39.5, 40, 151.7> } } RB(<14, 10, 151.3>, <23.4, 38, 152>, .3) RB(<28.6, 10, 151.3>, <38, 38, 152>, .3) texture { Door } }
union { sphere { <41.4, 40, 149.4> 1.3 } cylinder { <41.4, 40, 149> <41.4, 40, 151.4> .5 } RB(<40, 35, 150.9>, <42.8, 44, 151.4>, .1) RB(<20, 30, 150>, <32, 32.4, 150.9>, .1) translate y * 2 texture { Brass } }
box { <-60, -4, 160> <160, -3, 500> pigment { rgb <.35, .34, .32> } } box { <-80, -4, 420> <200, 90, 424> pigment { brick rgb <.40, .37, .33>, rgb <.26, .15, .11> brick_size <8, 2.7, 4> mortar .4 } } box { <-30, -4, 330> <10, 70, 340> pigment { rgb <.14, .22, .09> } normal { bumps 1 scale 9 } }
// stair going up toward the back of the house, seen from beside its foot
#declare T = texture { Map("hall/photos/tread-oak.jpg", 24, 18, 2, 0) finish { Satin } };
#declare k = 0; #while (k < 14)
  box { <48, 0, 92 - k * 10 - 10> <84, (k + 1) * 7.6 - 1.2, 92 - k * 10> texture { pigment { rgb <.60, .575, .52> } finish { Satin } } }
  #if (mod(k, 3) = 1) box { <47.5, 0, 92 - k * 10 - 11.6> <48.2, (k + 2) * 7.6 - 9, 92 - k * 10 - 8.4> texture { Trim } } #end
  union { RB(<46.8, (k + 1) * 7.6 - 1.25, 92 - k * 10 - 10.2>, <84, (k + 1) * 7.6, 92 - k * 10 + 1.1>, .4) texture { T } }
  #declare j = 0; #while (j < 2) #declare zz = 92 - k * 10 - 2 - j * 5; box { <48.4, (k + 1) * 7.6, zz - .5> <49.4, (k + 1) * 7.6 + 31 + (j ? 3.8 : 0), zz + .5> texture { Trim } } #declare j = j + 1; #end
  #declare k = k + 1; #end
box { <47.3, -11, -60> <48.3, 0.2, 92> texture { Trim } matrix <1, 0, 0, 0, 1, 0, 0, -.76, 1, 0, 69.92, 0> }
union { cylinder { <48.9, 39, 95> <48.9, 39 + 14 * 7.6 + 3, -48> 1.2 } sphere { <48.9, 39, 95> 1.2 } Oak(1, 0) }
union { box { <47.2, 0, 93.4> <50.6, 42, 96.8> } RB(<46.6, 41.6, 92.8>, <51.2, 43, 97.4>, .3) sphere { <48.9, 45.2, 95.1> 2.2 } Oak(0, 1) }
// rail of hooks, a bench, a coat and a hat
union { RB(<0, 62, 62>, <.9, 66.4, 112>, .1) texture { Map("hall/photos/tread-oak.jpg", 24, 18, 1, 0) finish { Satin } } }
#declare k = 0; #while (k < 5) union { cylinder { <.9, 64, 67 + k * 10> <3.4, 64.4, 67 + k * 10> .28 } sphere { <3.5, 65, 67 + k * 10> .55 } cylinder { <.9, 63, 67 + k * 10> <2.6, 61, 67 + k * 10> .25 } sphere { <2.7, 61.2, 67 + k * 10> .42 } texture { Brass } } #declare k = k + 1; #end
#macro Coat(zc, C) union { superellipsoid { <.7, .5> scale <2.6, 17, 7> translate <4.2, 45, zc> } sphere { 0 1 scale <2.4, 5, 6.4> translate <4, 59, zc> } superellipsoid { <.8, .6> scale <2, 13, 2.4> rotate x * 8 translate <4.6, 47, zc + 7> } pigment { rgb C } finish { Flat } normal { average normal_map { [1 bumps 2.4 scale <4, 24, 2.6>] [1 bumps .6 scale .3] } } } #end
Coat(77, <.045, .06, .09>) Coat(97, <.34, .27, .17>)
union { torus { 4.6, .6 scale <1, .6, 1> } sphere { 0 1 scale <3.8, 3.4, 3.8> } cylinder { <0, -.15, 0> <0, .15, 0> 6.6 } rotate z * -74 translate <3.6, 61, 107> pigment { rgb <.62, .48, .28> } normal { bumps .8 scale .2 } }
union { RB(<1, 17, 58>, <13, 18.6, 112>, .2) RB(<2, 0, 60>, <12, 17, 61.6>, .1) RB(<2, 0, 108.4>, <12, 17, 110>, .1) texture { Map("hall/photos/tread-oak.jpg", 24, 18, 2, 1) finish { Satin } } }
object { RB(<1.6, 18.6, 62>, <12.6, 21, 82>, .9) pigment { rgb <.36, .13, .07> } finish { Flat } normal { bumps .8 scale .2 } }
union { superellipsoid { <.6, .5> scale <2, 1.6, 4.6> translate <7, 1.6, 74> } superellipsoid { <.6, .5> scale <2, 1.6, 4.6> translate <7, 1.6, 81> } pigment { rgb <.10, .05, .03> } finish { Satin } }
// runner
box { <12, 0, -80> <38, .3, 118> texture { pigment { gradient x color_map { [0 rgb <.03, .05, .08>] [.12 rgb <.03, .05, .08>] [.12 rgb <.58, .54, .45>] [.3 rgb <.58, .54, .45>] [.3 rgb <.33, .11, .055>] [.38 rgb <.33, .11, .055>] [.38 rgb <.58, .54, .45>] [.62 rgb <.58, .54, .45>] [.62 rgb <.33, .11, .055>] [.7 rgb <.33, .11, .055>] [.7 rgb <.58, .54, .45>] [.88 rgb <.58, .54, .45>] [.88 rgb <.03, .05, .08>] [1 rgb <.03, .05, .08>] } scale 26 translate x * 12 } finish { Flat } normal { bumps 1 scale <.3, .3, .15> } } }
// lantern
#declare Dark = texture { pigment { rgb <.07, .052, .035> } finish { ambient 0 diffuse .6 specular .4 roughness .03 reflection .06 } };
union { #declare k = 0; #while (k < 6) union { cylinder { <3.6, 0, 0> <5, 11, 0> .25 } cylinder { <5, 11, 0> <1, 15, 0> .22 } rotate y * k * 60 }
    cylinder { <3.6 * cos(radians(k * 60)), 0, 3.6 * sin(radians(k * 60))> <3.6 * cos(radians(k * 60 + 60)), 0, 3.6 * sin(radians(k * 60 + 60))> .22 } cylinder { <5 * cos(radians(k * 60)), 11, 5 * sin(radians(k * 60))> <5 * cos(radians(k * 60 + 60)), 11, 5 * sin(radians(k * 60 + 60))> .24 } #declare k = k + 1; #end
  cylinder { <0, 15, 0> <0, 60, 0> .2 } sphere { <0, 15.4, 0> 1 } texture { Dark } translate <24, 84, 60> no_shadow }
union { #declare k = 0; #while (k < 3) sphere { 0 1 scale <.7, 1.4, .7> translate <1.3 * cos(k * 2.09), 6, 1.3 * sin(k * 2.09)> } cylinder { <1.3 * cos(k * 2.09), 1, 1.3 * sin(k * 2.09)> <1.3 * cos(k * 2.09), 5, 1.3 * sin(k * 2.09)> .45 } #declare k = k + 1; #end pigment { rgb 1 } finish { emission 1.4 * <1, .84, .55> } translate <24, 84, 60> no_shadow }
light_source { <24, 90, 60> rgb <1, .80, .52> * .42 fade_distance 60 fade_power 2 area_light x * 6, z * 6, 3, 3 adaptive 1 jitter }
Day(1.5)
light_source { <130, 420, 620> rgb <1, .90, .74> * 1.6 area_light <30, 0, 0>, <0, 30, 0>, 4, 4 adaptive 1 jitter }
light_source { <28, 110, -80> rgb <.96, .98, 1> * .42 area_light x * 30, z * 60, 4, 4 adaptive 1 jitter }
light_source { <66, 200, 20> rgb <.96, .98, 1> * .5 area_light x * 30, z * 60, 4, 4 adaptive 1 jitter }
camera { location <21, 57, -62> look_at <39, 52, 100> right x * 4 / 3 up y angle 60 }
