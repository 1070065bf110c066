#declare S = 62;
#include "studio.inc"
Sweep(<.43, .425, .41>)
// a freestanding bath: walls that lean out, a rolled rim
#declare N = 46;
#declare P = array[N][5];
#declare i = 0; #while (i < N)
  #if (i < 22) #declare q = i / 21; #declare h = 1 + 20.6 * q; #declare g = pow(q, 1.35); #declare P[i][0] = 23.5 + 5.6 * g - 2 * pow(1 - q, 8); #declare P[i][2] = 11 + 3.9 * g - 2 * pow(1 - q, 8);
  #else #if (i < 32) #declare q = (i - 22) / 9; #declare h = 21.8 + .9 * sin(q * pi * 1.15 - .25); #declare P[i][0] = 29.9 + 1.1 * cos(q * pi - .2) - .6; #declare P[i][2] = 15.6 + 1.1 * cos(q * pi - .2) - .7;
  #else #declare q = (i - 32) / 13; #declare h = 21.4 - 16 * sin(q * pi / 2); #declare P[i][0] = 28.1 * sqrt(max(0, 1 - pow(q, 3.4))) ; #declare P[i][2] = 13.7 * sqrt(max(0, 1 - pow(q, 3.4))); #end #end
  #declare P[i][1] = h; #declare P[i][3] = .72; #declare P[i][4] = 0;
  #declare i = i + 1; #end
object { Loft(P, N, 96) texture { Porcelain } }
union { cylinder { <0, 5.1, 0> <0, 5.3, 0> 1.4 } texture { Chrome } }
union { cylinder { <-26.5, 15.5, 0> <-25.2, 15.5, 0> 1.6 } texture { Chrome } }
#declare PA = array[4] { <8, 0, 20.5>, <8, 36, 20.5>, <8, 36, 9>, <8, 31.5, 9> }
union { Pipe(PA, 3, .6) cylinder { <8, 0, 20.5> <8, .4, 20.5> 1.6 } cylinder { <5, 27, 20.5> <11, 27, 20.5> .8 } cylinder { <5, 27, 20.5> <5, 27, 17.5> .3 } cylinder { <11, 27, 20.5> <11, 27, 17.5> .3 } texture { Chrome } }
Shot(<1, 14.5, 0>, 168, -24, 15, 26)
