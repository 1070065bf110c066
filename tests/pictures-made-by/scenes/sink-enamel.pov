#declare S = 26;
#include "studio.inc"
Backwall(<.52, .51, .48>, <0, 0, 0>)
// a wall-hung enamelled sink with a tall back
difference { union { Slab(-12, 12, -17, -1, -8.5, 0, 2.2, .6) }
  intersection { Slab(-10.9, 10.9, -15.9, -2.6, -7.4, 5, 1.6, 1.2) box { <-20, -7.5, -30> <20, 4, 10> } } Enamel(<.82, .82, .79>) }
union { RB(<-12, -2, -1.5>, <12, 9.4, 0>, .5) RB(<-12.2, 9.0, -1.9>, <12.2, 10, 0>, .4) Enamel(<.82, .82, .79>) }
union { cylinder { <0, -7.35, -9> <0, -7.2, -9> 1.6 } torus { 1.55, .14 translate <0, -7.25, -9> } texture { Chrome } }
union { #declare k = -1; #while (k < 2) cylinder { <k * 4, 5, -1.4> <k * 4, 5, -3.2> .55 } cylinder { <k * 4, 5, -1.4> <k * 4, 5, -1.8> 1.0 } sphere { <k * 4, 5, -3.4> .7 } cylinder { <k * 4 - 1.2, 5, -3.7> <k * 4 + 1.2, 5, -3.7> .2 } cylinder { <k * 4, 3.8, -3.7> <k * 4, 6.2, -3.7> .2 } #declare k = k + 2; #end
  cylinder { <-4, 5, -2.6> <4, 5, -2.6> .5 } sphere { <0, 5, -2.6> .8 } #declare PA = array[3] { <0, 5, -2.6>, <0, 4.6, -10>, <0, 2.6, -10.4> } Pipe(PA, .8, .42) texture { Chrome } }
Shot(<0, -.4, -8>, 72, -27, 21, 29)
