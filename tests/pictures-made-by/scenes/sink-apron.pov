#declare S = 34;
#include "studio.inc"
Sweep(<.46, .45, .43>)
difference {
  union { Slab(-15, 15, -20, 0, 0, 9.6, 1.2, .5) }
  intersection { Slab(-13.6, 13.6, -18.4, -1.4, 1.4, 14, 2.2, 1.2) box { <-20, 1.3, -30> <20, 13, 10> } }
  texture { Porcelain } }
union { cylinder { <0, 1.3, -9.6> <0, 1.5, -9.6> 1.9 } torus { 1.8, .14 translate <0, 1.5, -9.6> } texture { Brass } }
cylinder { <0, 1.5, -9.6> <0, 1.56, -9.6> 1.3 pigment { rgb .03 } }
#declare k = 0; #while (k < 9) box { <-11.5 + k * 2.9, 2, -20.22> <-11.2 + k * 2.9, 7.8, -20> texture { Porcelain } } #declare k = k + 1; #end
Shot(<0, 4.2, -9>, 78, -24, 27, 29)
