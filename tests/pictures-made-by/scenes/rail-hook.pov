#declare S = 26;
#include "studio.inc"
plane { -z, 0 texture { Map("hall/photos/wall-limewash.jpg", 90, 67.5, 0, 0) finish { Flat } } }
Panels(<0, 0, 0>) Key(<0, 0, 0>, .85)
union { RB(<-18, -2.4, -.9>, <18, 2.4, 0>, .14) texture { Map("hall/photos/tread-oak.jpg", 24, 18, 0, 0) finish { Satin } translate y * 7 } }
#macro Hook(X) union { cylinder { <X, 0, -.85> <X, 0, -1.1> .85 } torus { .78, .1 rotate x * 90 translate <X, 0, -1.1> }
  #declare HA = array[4] { <X, .2, -1>, <X, .2, -2.6>, <X, -2.2, -2.6>, <X, -2.2, -4.4> }
  #declare HB = array[4] { <X, -.4, -1>, <X, -2.2, -1.4>, <X, -2.2, -3.4>, <X, -.7, -3.6> } Pipe(HB, .7, .21) sphere { <X, -.7, -3.6> .38 }
  #declare HC = array[4] { <X, .3, -1>, <X, .5, -2.6>, <X, 1.2, -4.4>, <X, 2.6, -4.6> } Pipe(HC, .7, .23) sphere { <X, 2.7, -4.62> .46 } texture { Brass } } #end
Hook(-13.5) Hook(-4.5) Hook(4.5) Hook(13.5)
// a straw hat and a cloth bag
union { torus { 4.4, .35 scale <1, .5, 1> } difference { sphere { 0 1 scale <3.6, 3.4, 3.6> } plane { y, 0 } } cylinder { <0, -.1, 0> <0, .1, 0> 6.4 } rotate x * -78 translate <13.5, -4.6, -2.0> pigment { rgb <.62, .48, .28> } finish { Flat } normal { bumps .8 scale .16 } }
Shot(<0, -1.2, -2>, 76, -24, 4, 27)
