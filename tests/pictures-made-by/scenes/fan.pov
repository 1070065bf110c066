#declare S = 14;
#include "studio.inc"
Sweep(<.43, .425, .41>)
union {
  Slab(-6.6, 6.6, -6.6, 6.6, 0, .5, .8, .2)
  #declare k = 0; #while (k < 15) RB(<-5.6, .3, -5.6 + k * .8 - .16>, <5.6, .95, -5.6 + k * .8 + .16>, .1) #declare k = k + 1; #end
  RB(<-6.1, .3, -6.1>, <-5.4, 1.0, 6.1>, .1) RB(<5.4, .3, -6.1>, <6.1, 1.0, 6.1>, .1) RB(<-6.1, .3, -6.1>, <6.1, 1.0, -5.5>, .1) RB(<-6.1, .3, 5.5>, <6.1, 1.0, 6.1>, .1)
  Lacquer(<.80, .79, .77>) rotate x * -74 translate <-1.2, 6.6, -1.4> }
union { RB(<-5, 0, -5>, <5, 7.4, 5>, .15) texture { pigment { rgb <.38, .385, .39> } finish { ambient 0 diffuse .7 specular .3 roughness .05 reflection { .08 } } } rotate y * 18 translate <3.6, 0, 8> }
union { cylinder { <0, 0, 0> <5, 0, 0> 2.0 } torus { 2, .16 rotate z * 90 translate x * 1 } torus { 2, .16 rotate z * 90 translate x * 2 } torus { 2, .16 rotate z * 90 translate x * 5 } texture { pigment { rgb <.42, .425, .43> } finish { ambient 0 diffuse .6 reflection .12 } } rotate y * 18 translate <8, 4.2, 6.6> }
Shot(<1.4, 5.0, 0>, 42, -16, 16, 29)
