#declare S = 18;
#include "studio.inc"
Sweep(<.45, .445, .435>)
#declare PA = array[4] { <0, 0, 0>, <0, 15.5, 0>, <0, 15.5, -8.4>, <0, 8.6, -8.4> }
union { Pipe(PA, 4.15, .52) cylinder { <0, 0, 0> <0, .3, 0> 1.3 } cylinder { <0, .3, 0> <0, 5.4, 0> .88 } torus { .8, .09 translate <0, 5.4, 0> }
  cone { <0, 10.9, -8.4> .60 <0, 8.0, -8.4> .74 } torus { .62, .06 translate <0, 10.9, -8.4> } cylinder { <0, 3.4, 0> <1.9, 3.4, 0> .62 } cylinder { <1.9, 3.4, 0> <2.2, 3.4, 0> .66 } 
  cylinder { <2.0, 3.6, 0> <2.6, 7.0, -.3> .2 } sphere { <2.6, 7.0, -.3> .2 } texture { Nickel } }
cylinder { <0, 7.98, -8.4> <0, 8.02, -8.4> .6 pigment { rgb .05 } }
Shot(<0, 8, -3>, 48, -32, 11, 27)
