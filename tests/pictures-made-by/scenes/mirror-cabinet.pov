#declare S = 30;
#include "studio.inc"
plane { -z, 0 pigment { rgb <.50, .53, .49> } finish { ambient 0 diffuse .82 } normal { bumps .03 scale .12 } }
Key(<0, 0, 0>, .85)
sky_sphere { pigment { rgb <.42, .41, .39> } }
box { <-11, -14, -4.6> <11, 14, 0> Oak(0, 1) }
#macro Door() union {
  union { RB(<0, -14.2, -.9>, <1.5, 14.2, 0>, .08) RB(<20.7, -14.2, -.9>, <22.2, 14.2, 0>, .08) Oak(0, 1) }
  union { RB(<1.45, -14.2, -.9>, <20.75, -12.7, 0>, .08) RB(<1.45, 12.7, -.9>, <20.75, 14.2, 0>, .08) Oak(0, 0) }
  box { <1.4, -12.8, -.5> <20.8, 12.8, -.1> pigment { rgb .03 } finish { ambient 0 diffuse .1 reflection { rgb <.86, .885, .87> } } } } #end
union { Door() translate <-11.1, 0, 0> rotate y * 0 translate <0, 0, -4.6> }
sphere { <9.6, -3, -6.1> .45 texture { Nickel } } cylinder { <9.6, -3, -5.4> <9.6, -3, -6> .2 texture { Nickel } }
// what the glass sees: the other wall with a window
box { <-220, -90, -150> <220, 120, -152> pigment { rgb <.55, .53, .49> } no_image no_shadow }
box { <62, -6, -149.5> <104, 50, -149> pigment { rgb 1 } finish { diffuse 0 emission 1.0 * <.92, .97, 1> } no_image no_shadow }
box { <82, -6, -148.8> <84, 50, -148.5> pigment { rgb .6 } no_image no_shadow } box { <62, 20, -148.8> <104, 22, -148.5> pigment { rgb .6 } no_image no_shadow }
box { <22, -90, -149> <52, 36, -148> pigment { rgb <.25, .36, .31> } no_image no_shadow }
Shot(<0, 0, -3>, 84, -27, 2, 27)
