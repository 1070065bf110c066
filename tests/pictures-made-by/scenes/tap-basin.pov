#declare S = 9;
#include "studio.inc"
Sweep(<.44, .435, .425>)
#declare PA = array[3] { <0, 4.6, 0>, <0, 5.6, -3>, <0, 4.2, -5.2> }
#macro Handle(X)
  union { cylinder { <X, 0, 0> <X, .18, 0> .95 } torus { .86, .09 translate <X, .18, 0> } cone { <X, .18, 0> .75 <X, 1.3, 0> .46 } cylinder { <X, 1.2, 0> <X, 2.0, 0> .52 } torus { .5, .07 translate <X, 1.4, 0> }
    sphere { <X, 2.25, 0> .5 } cylinder { <X - 1.15, 2.25, 0> <X + 1.15, 2.25, 0> .17 } cylinder { <X, 2.25, -1.15> <X, 2.25, 1.15> .17 }
    sphere { <X - 1.15, 2.25, 0> .25 } sphere { <X + 1.15, 2.25, 0> .25 } sphere { <X, 2.25, -1.15> .25 } sphere { <X, 2.25, 1.15> .25 } sphere { <X, 2.72, 0> .2 } } #end
union { Handle(-4) Handle(4) 
  cylinder { <0, 0, 0> <0, .2, 0> 1.15 } torus { 1.05, .1 translate y * .2 } cone { <0, .2, 0> .9 <0, 1.4, 0> .58 } cylinder { <0, 1.3, 0> <0, 4.0, 0> .55 } torus { .54, .09 translate y * 1.6 } 
  #declare PB = array[4] { <0, 3.6, 0>, <0, 7.2, 0>, <0, 7.2, -4.6>, <0, 4.2, -4.6> } Pipe(PB, 2.1, .46) cylinder { <0, 4.6, -4.6> <0, 4.0, -4.6> .54 } torus { .56, .08 translate y * 4 }
  texture { Nickel } }
Shot(<0, 3.4, -1.2>, 28, -27, 17, 28)
