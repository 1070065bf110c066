#declare S = 17;
#include "studio.inc"
Sweep(<.44, .43, .415>)
lathe { cubic_spline 13, <-1, 0>, <0, 0>, <3.4, .05>, <4.4, .35>, <6.6, 2.4>, <7.85, 5.3>, <7.95, 5.6>, <7.75, 5.72>, <7.5, 5.5>, <6.2, 2.9>, <3.6, 1.15>, <0, .8>, <-1, .8> sturm texture { Porcelain } translate y * .12 }
union { cylinder { <0, .8, 0> <0, .95, 0> 1.2 } torus { 1.15, .1 translate y * .95 } sphere { 0 1 scale <.95, .3, .95> translate y * 1.05 } texture { Nickel } }
Shot(<0, 2.5, 0>, 36, -14, 27, 28)
