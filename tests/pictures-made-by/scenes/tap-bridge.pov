#declare S = 16;
#include "studio.inc"
Sweep(<.46, .45, .43>)
#macro Leg(X, s)
  union { cylinder { <X, 0, 0> <X, .22, 0> 1.12 } torus { 1.0, .12 translate <X, .22, 0> } cone { <X, .2, 0> .95 <X, 1.2, 0> .56 } cylinder { <X, 1, 0> <X, 4.6, 0> .5 } torus { .5, .1 translate <X, 1.4, 0> }
    sphere { <X, 3.4, 0> .86 } torus { .6, .12 translate <X, 4.3, 0> } cone { <X, 4.5, 0> .62 <X, 5.3, 0> .44 } sphere { <X, 5.3, 0> .44 }
    cylinder { <X, 5.15, 0> <X + s * 2.9, 5.5, -.5> .2 } sphere { <X + s * 2.9, 5.5, -.5> .3 } sphere { <X, 5.62, 0> .24 } }
#end
#declare PA = array[4] { <0, 3.4, 0>, <0, 13.4, 0>, <0, 13.4, -7.2>, <0, 9.2, -7.2> }
union { Leg(-4, -1) Leg(4, 1) cylinder { <-4, 3.4, 0> <4, 3.4, 0> .48 } sphere { <0, 3.4, 0> .82 } torus { .62, .1 translate <0, 4.3, 0> } torus { .55, .1 rotate z * 90 translate <-1.1, 3.4, 0> } torus { .55, .1 rotate z * 90 translate <1.1, 3.4, 0> }
  Pipe(PA, 3.5, .46) cylinder { <0, 9.0, -7.2> <0, 10, -7.2> .58 } torus { .56, .07 translate <0, 9.9, -7.2> } torus { .5, .08 translate <0, 9.4, 0> } texture { Brass } }
Shot(<0, 6.7, -2.4>, 41, -31, 13, 27)
