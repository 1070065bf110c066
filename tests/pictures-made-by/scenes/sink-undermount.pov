#declare S = 32;
#include "studio.inc"
Sweep(<.46, .45, .43>)
// let into stone: the bowl seen from above
#declare Lift = 12;
union {
difference { RB(<-34, -1.2, -25>, <34, 0, 25>, .1)
  intersection { Slab(-14, 14, -8.5, 8.5, -3, 3, 1.4, .2) box { <-20, -2, -20> <20, 1, 20> } } Schist(2) }
difference { Slab(-14.7, 14.7, -9.2, 9.2, -10, -1.2, 2, .3) Slab(-14.2, 14.2, -8.7, 8.7, -9.2, 6, 1.4, .9) texture { SteelH } }
union { torus { 1.75, .16 translate <0, -9.15, 1.5> } cylinder { <0, -9.2, 1.5> <0, -9.1, 1.5> 1.7 } texture { Chrome } }
#declare k = 0; #while (k < 8) cylinder { <1.0 * cos(k * .785), -9.12, 1.5 + 1.0 * sin(k * .785)> <1.0 * cos(k * .785), -9.05, 1.5 + 1.0 * sin(k * .785)> .2 pigment { rgb .01 } } #declare k = k + 1; #end
#declare PA = array[4] { <0, 0, 12>, <0, 15, 12>, <0, 15, 4.5>, <0, 9.5, 4.5> }
union { Pipe(PA, 3.4, .5) cylinder { <0, 0, 12> <0, .35, 12> 1.2 } cylinder { <0, .3, 12> <0, 4.2, 12> .72 } cylinder { <0, 9.3, 4.5> <0, 10.6, 4.5> .6 } cylinder { <0, 3, 12> <2.6, 3.6, 12> .24 } texture { Brass } }
translate y * Lift }
Shot(<1, 14.6, 2>, 72, -20, 33, 32)
