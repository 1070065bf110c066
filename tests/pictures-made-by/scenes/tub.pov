#declare S = 62;
#include "studio.inc"
Sweep(<.43, .425, .41>)
// a freestanding bath: walls that lean out, a rolled rim
difference {
  union { #declare i = 0; #while (i < 60) #declare q = i / 59;
      superellipsoid { <.62, .2> rotate x * 90 scale <24.5 + 5.5 * pow(q, 1.25), .8, 11 + 4.0 * pow(q, 1.25)> translate <0, 1 + 20.5 * q, 0> } #declare i = i + 1; #end }
  superellipsoid { <.6, .55> rotate x * 90 scale <27.6, 19, 12.6> translate <0, 24, 0> }
  texture { Porcelain } }
difference {
  superellipsoid { <.62, .6> rotate x * 90 scale <31, 1.1, 16> translate <0, 22, 0> }
  superellipsoid { <.6, .2> rotate x * 90 scale <27.7, 3, 12.7> translate <0, 22, 0> }
  texture { Porcelain } }
union { cylinder { <0, 5.1, 0> <0, 5.3, 0> 1.4 } texture { Chrome } }
union { cylinder { <-26.5, 15.5, 0> <-25.2, 15.5, 0> 1.6 } texture { Chrome } }
#declare PA = array[4] { <8, 0, 20.5>, <8, 36, 20.5>, <8, 36, 9>, <8, 31.5, 9> }
union { Pipe(PA, 3, .6) cylinder { <8, 0, 20.5> <8, .4, 20.5> 1.6 } cylinder { <5, 27, 20.5> <11, 27, 20.5> .8 } cylinder { <5, 27, 20.5> <5, 27, 17.5> .3 } cylinder { <11, 27, 20.5> <11, 27, 17.5> .3 } texture { Chrome } }
Shot(<1, 14.5, 0>, 168, -24, 15, 26)
