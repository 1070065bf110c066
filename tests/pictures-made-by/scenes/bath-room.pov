#include "room.inc"
// the bath under the slope: x 0 to 84, z 0 to 110; the roof comes down on the left from 92 to 44 inches
#declare B = texture { Map("bath/photos/wall-board.jpg", 32, 24, 2, 1) finish { Satin } };
box { <-2, -1, -60> <86, 0, 112> texture { Map("bath/photos/floor-terrazzo.jpg", 24, 18, 2, 0) finish { Satin } } }
difference { box { <84, 0, -60> <90, 110, 112> pigment { rgb <.62, .66, .60> } finish { Flat } } box { <80, 30, -20> <100, 82, -60> } }
difference { box { <-4, 0, 110> <90, 120, 114> texture { Map("bath/photos/tile-river.jpg", 24, 18, 0, 0) finish { ambient 0 diffuse .8 specular .3 roughness .01 reflection { .01, .35 fresnel on } } } } box { <200, 0, 0> <201, 1, 1> } }
box { <-4, 0, -60> <0, 46, 112> texture { Map("bath/photos/tile-river.jpg", 24, 18, 1, 0) finish { ambient 0 diffuse .8 specular .3 roughness .01 reflection { .01, .35 fresnel on } } } }
box { <0, 43.4, -60> <1.6, 45, 110> texture { Trim } }
// the slope, with a roof window
difference { box { <0, 0, -60> <100, 4, 112> texture { B } } box { <16, -2, 34> <52, 8, 74> texture { Trim } } rotate z * 42 translate <-2, 43, 0> }
union { difference { box { <15, -.4, 33> <53, 3, 75> } box { <17, -2, 35> <51, 8, 73> } } texture { Trim } rotate z * 42 translate <-2, 43, 0> }
box { <50, 96, -60> <90, 100, 112> texture { B } }
// tub along the end wall
#declare N = 46;
#declare P = array[N][5];
#declare i = 0; #while (i < N)
  #if (i < 22) #declare q = i / 21; #declare h = 1 + 20.6 * q; #declare g = pow(q, 1.35); #declare P[i][0] = 23.5 + 5.6 * g - 2 * pow(1 - q, 8); #declare P[i][2] = 11 + 3.9 * g - 2 * pow(1 - q, 8);
  #else #if (i < 32) #declare q = (i - 22) / 9; #declare h = 21.8 + .9 * sin(q * pi * 1.15 - .25); #declare P[i][0] = 29.9 + 1.1 * cos(q * pi - .2) - .6; #declare P[i][2] = 15.6 + 1.1 * cos(q * pi - .2) - .7;
  #else #declare q = (i - 32) / 13; #declare h = 21.4 - 16 * sin(q * pi / 2); #declare P[i][0] = 28.1 * sqrt(max(0, 1 - pow(q, 3.4))) ; #declare P[i][2] = 13.7 * sqrt(max(0, 1 - pow(q, 3.4))); #end #end
  #declare P[i][1] = h; #declare P[i][3] = .72; #declare P[i][4] = 0;
  #declare i = i + 1; #end
object { Loft(P, N, 80) texture { Porcelain } translate <38, 0, 90> }
#declare PA = array[4] { <64, 0, 104>, <64, 35, 104>, <64, 35, 95>, <64, 31, 95> }
union { Pipe(PA, 3, .55) cylinder { <61, 27, 104> <67, 27, 104> .8 } cylinder { <64, 0, 104> <64, .4, 104> 1.6 } cylinder { <61, 27, 104> <61, 27, 101> .3 } cylinder { <67, 27, 104> <67, 27, 101> .3 } texture { Nickel } }
// vanity on the right wall
union {
  union { RB(<-18, 8, -20>, <18, 32, 0>, .1) RB(<-17.5, 8.4, -20.9>, <17.5, 19.6, -19.9>, .1) RB(<-17.5, 20, -20.9>, <17.5, 31.4, -19.9>, .1) Oak(0, 0) }
  box { <-17.6, 19.5, -20.5> <17.6, 20.1, -19.8> pigment { rgb .02 } }
  BarPull(<0, 17.4, -20.9>, 9, .28, Nickel, 0) BarPull(<0, 29.2, -20.9>, 9, .28, Nickel, 0)
  union { RB(<-18.5, 32, -21.5>, <18.5, 33.2, 0>, .12) texture { Map("kitchen/photos/counter-quartz.jpg", 60, 45, 2, 0) finish { Satin } } }
  #declare k = 0; #while (k < 4) cylinder { <-16.8 + mod(k, 2) * 33.6, 0, -18.8 + floor(k / 2) * 17.4> <-16.8 + mod(k, 2) * 33.6, 8.1, -18.8 + floor(k / 2) * 17.4> .9 Oak(0, 1) } #declare k = k + 1; #end
  lathe { cubic_spline 8, <-.5, 33.2>, <0, 33.2>, <4.8, 33.3>, <7.2, 35.4>, <7.8, 37.6>, <7.5, 37.7>, <6.6, 35.4>, <0, 33.9> sturm translate z * -10.5 texture { Porcelain } }
  union { #declare PB = array[3] { <0, 43, 0>, <0, 43, -7>, <0, 40.6, -7> } Pipe(PB, 1.2, .42) cylinder { <0, 43, 0> <0, 43, -.3> 1.1 } cylinder { <-4, 43, 0> <-4, 43, -2.4> .7 } cylinder { <4, 43, 0> <4, 43, -2.4> .7 } cylinder { <-5, 43, -2.2> <-3, 43, -2.2> .2 } cylinder { <3, 43, -2.2> <5, 43, -2.2> .2 } texture { Nickel } }
  // mirror cabinet and two lights
  union { box { <-11, 50, -4.6> <11, 78, 0> Oak(0, 1) } union { RB(<-11.1, 49.8, -5.5>, <-9.6, 78.2, -4.6>, .08) RB(<9.6, 49.8, -5.5>, <11.1, 78.2, -4.6>, .08) RB(<-9.7, 49.8, -5.5>, <9.7, 51.3, -4.6>, .08) RB(<-9.7, 76.7, -5.5>, <9.7, 78.2, -4.6>, .08) Oak(0, 1) }
    box { <-9.8, 51, -5.1> <9.8, 77, -4.7> pigment { rgb .03 } finish { ambient 0 diffuse .1 reflection .84 } } }
  #declare k = -1; #while (k < 2)
    union { cylinder { <k * 15, 62, 0> <k * 15, 62, -.5> 2.2 } cylinder { <k * 15, 62, 0> <k * 15, 62, -4> .28 } cylinder { <k * 15, 61.8, -4> <k * 15, 64.6, -4> .8 } texture { Nickel } }
    superellipsoid { <1, .5> rotate x * 90 scale <2.4, 3.6, 2.4> translate <k * 15, 68, -4> texture { pigment { rgb <.95, .92, .85> } finish { ambient 0 diffuse .5 emission .75 * <1, .90, .72> } } no_shadow }
    light_source { <k * 15, 68, -5> rgb <1, .80, .54> * .3 fade_distance 16 fade_power 2 }
    #declare k = k + 2; #end
  rotate y * 90 translate <84, 0, 42> }
// stool with a towel, a mat, a plant
union { cylinder { <0, 16.6, 0> <0, 18, 0> 6.4 } #declare k = 0; #while (k < 3) cylinder { <4 * cos(k * 2.09), 17, 4 * sin(k * 2.09)> <5.8 * cos(k * 2.09), 0, 5.8 * sin(k * 2.09)> .6 } #declare k = k + 1; #end Oak(2, 0) translate <24, 0, 62> }
union { RB(<19, 18, 57.5>, <29, 19.8, 66>, .8) RB(<19.3, 19.7, 57.8>, <28.7, 21.3, 65.7>, .7) pigment { rgb <.66, .63, .55> } finish { Flat } normal { bumps 1 scale .14 } }
Tulip(<76, 33.2, 27>, 12)
box { <26, 0, 20> <50, .5, 54> pigment { rgb <.60, .60, .54> } finish { Flat } normal { bumps 1.2 scale .5 } }
Day(1.5)
light_source { <-180, 420, 20> rgb <1, .92, .78> * 1.9 area_light <30, 0, 0>, <0, 0, 30>, 4, 4 adaptive 1 jitter }
light_source { <40, 78, -50> rgb <.95, .98, 1> * .55 area_light x * 40, z * 40, 4, 4 adaptive 1 jitter }
camera { location <36, 52, -46> look_at <42, 47, 80> right x * 4 / 3 up y angle 62 }
