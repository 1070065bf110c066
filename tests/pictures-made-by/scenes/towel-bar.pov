#declare S = 22;
#include "studio.inc"
Backwall(<.46, .50, .46>, <0, 0, 0>)
union { cylinder { <-12, 0, -2.6> <12, 0, -2.6> .36 } #declare k = -1; #while (k < 2) cylinder { <k * 11.2, 0, 0> <k * 11.2, 0, -.3> 1.2 } torus { 1.1, .12 rotate x * 90 translate <k * 11.2, 0, -.3> } cone { <k * 11.2, 0, -.3> .8 <k * 11.2, 0, -2.6> .42 } sphere { <k * 12, 0, -2.6> .5 } sphere { <k * 11.2, 0, -2.6> .56 } #declare k = k + 2; #end texture { Nickel } }
#macro Cloth(x0, x1, len, zf)
  box { <x0, -len, zf - .14> <x1, .1, zf + .14> texture { pigment { gradient y color_map { [0 rgb <.66, .62, .53>] [.86 rgb <.66, .62, .53>] [.86 rgb <.20, .30, .26>] [.95 rgb <.20, .30, .26>] [.95 rgb <.66, .62, .53>] [1 rgb <.66, .62, .53>] } scale -len }
    finish { Flat } normal { average normal_map { [1 bumps 1.2 scale .09] [1 bumps .8 scale <1.6, 18, 1>] } } } }
#end
Cloth(-4.6, 5.2, 13, -3.12) Cloth(-4.4, 5.0, 11.6, -2.1)
intersection { cylinder { <-4.6, 0, -2.6> <5.2, 0, -2.6> .66 } plane { -y, 0 } pigment { rgb <.66, .62, .53> } finish { Flat } normal { bumps 1.2 scale .09 } }
Shot(<0, -4.6, -2>, 64, -22, 5, 27)
