#declare S = 78;
#include "studio.inc"
// a fixed pane and a door on a low sill, tile behind
plane { -z, -34 texture { Map("bath/photos/tile-river.jpg", 24, 18, 0, 0) finish { Satin } } }
box { <-80, -1, -80> <80, 0, 40> texture { Map("bath/photos/floor-terrazzo.jpg", 24, 18, 2, 0) finish { Satin } } }
box { <-80, 0, -3> <80, 3, 3> pigment { rgb <.70, .69, .66> } finish { Satin } }
#macro Pane(a, b) box { a b texture { pigment { rgbt <.86, .95, .91, .93> } finish { ambient 0 diffuse 0 specular .4 roughness .003 reflection { .022, .25 } } } interior { ior 1.02 } no_shadow } #end
Pane(<-60, 3.2, -.2>, <0, 76, .2>)
union { Pane(<0, 3.6, -.2>, <28, 76, .2>) rotate y * 0 translate <.4, 0, 0> }
box { <-.03, 3.2, -.22> <.03, 76, .22> pigment { rgb <.10, .26, .20> } } box { <.37, 3.6, -.22> <.43, 76, .22> pigment { rgb <.10, .26, .20> } }
box { <-60, 75.9, -.2> <28.4, 76.05, .2> pigment { rgb <.28, .5, .42> } finish { emission .1 } }
union {
  #declare k = 0; #while (k < 2) RB(<-1.2, 12 + k * 50, -.7>, <1.6, 15.6 + k * 50, .7>, .12) #declare k = k + 1; #end
  cylinder { <24, 36, -2.4> <24, 46, -2.4> .45 } cylinder { <24, 37, -2.4> <24, 37, 2> .32 } cylinder { <24, 45, -2.4> <24, 45, 2> .32 } cylinder { <24, 36, 2> <24, 46, 2> .45 }
  box { <-60, 3, -.5> <0, 3.6, .5> } cylinder { <-60, 80, 0> <34, 80, 0> .5 } cylinder { <-14, 76, 0> <-14, 80, 0> .4 }
  texture { Nickel } }
Panels(<0, 0, 0>) Key(<0, 0, 0>, .9)
Shot(<-6, 41, 0>, 186, 20, 5, 33)
