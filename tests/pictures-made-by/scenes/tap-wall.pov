#declare S = 12;
#include "studio.inc"
Backwall(<.50, .49, .46>, <0, 0, 0>)
union { #declare k = -1; #while (k < 2)
    cylinder { <k * 4, 0, 0> <k * 4, 0, -.2> 1.3 } torus { 1.2, .12 rotate x * 90 translate <k * 4, 0, -.2> } cone { <k * 4, 0, -.2> .85 <k * 4, 0, -1.6> .55 } cylinder { <k * 4, 0, -1.5> <k * 4, 0, -3.2> .6 } sphere { <k * 4, 0, -2.8> .85 }
    cylinder { <k * 4, 0, -2.8> <k * 4, 1.5, -2.8> .5 } torus { .5, .08 translate <k * 4, 1.1, -2.8> } sphere { <k * 4, 1.75, -2.8> .45 }
    cylinder { <k * 4 - 1.25, 1.8, -2.8> <k * 4 + 1.25, 1.8, -2.8> .19 } cylinder { <k * 4, 1.8, -4.05> <k * 4, 1.8, -1.55> .19 }
    sphere { <k * 4 - 1.25, 1.8, -2.8> .28 } sphere { <k * 4 + 1.25, 1.8, -2.8> .28 } sphere { <k * 4, 1.8, -4.05> .28 } sphere { <k * 4, 1.8, -1.55> .28 } sphere { <k * 4, 2.2, -2.8> .22 }
    #declare k = k + 2; #end
  cylinder { <-4, 0, -2.8> <4, 0, -2.8> .46 } sphere { <0, 0, -2.8> .85 } torus { .6, .09 rotate z * 90 translate <-1, 0, -2.8> } torus { .6, .09 rotate z * 90 translate <1, 0, -2.8> }
  #declare PA = array[3] { <0, 0, -2.8>, <0, -.4, -10>, <0, -2.2, -10.2> } Pipe(PA, 1.1, .44) cylinder { <0, -1.6, -10.2> <0, -2.4, -10.2> .55 } torus { .55, .07 translate <0, -1.6, -10.2> }
  texture { Chrome } }
Shot(<0, -.1, -4.4>, 36, -29, 17, 27)
