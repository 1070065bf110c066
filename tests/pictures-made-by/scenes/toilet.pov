#declare S = 32;
#include "studio.inc"
Sweep(<.43, .425, .41>)
// the foot and bowl grow out of one another, oval above oval
#declare N = 28;
#declare P = array[N][5];
#declare i = 0; #while (i < N)
  #declare q = i / (N - 1);
  #declare P[i][0] = 4.7 + 2.8 * pow(q, 2.2) - .6 * sin(q * 3.1); #declare P[i][1] = 15 * q; #declare P[i][2] = 8.6 + 2.0 * pow(q, 1.8) - .9 * sin(q * 3.1);
  #declare P[i][3] = .86; #declare P[i][4] = -12.4 - 2.8 * q;
  #declare i = i + 1; #end
object { Loft(P, N, 72) texture { Porcelain } }
#macro Oval(y0, y1, wx, z0, z1, r) intersection { superellipsoid { <.88, .12> rotate x * 90 scale <wx, (y1 - y0) / 2, (z1 - z0) / 2> translate <0, (y0 + y1) / 2, (z0 + z1) / 2> } box { <-20, y0, -60> <20, y1, 20> } } #end
union { Oval(14.8, 16.2, 7.4, -25.6, -5.5, .3) texture { Porcelain } }
union { Oval(16.3, 17.0, 7.6, -25.9, -6.2, .3) Lacquer(<.80, .79, .76>) }
union { Oval(17.05, 17.9, 7.6, -25.9, -6.2, .3) Lacquer(<.82, .81, .78>) }
union { cylinder { <-2.8, 17.2, -6.2> <-2.8, 18, -6.2> .6 } cylinder { <2.8, 17.2, -6.2> <2.8, 18, -6.2> .6 } texture { Chrome } }
union { Slab(-6, 6, -8.5, 0, 3, 16.2, 1.6, .4) texture { Porcelain } }
union { Slab(-7.6, 7.6, -7.8, 0, 15.8, 29.4, 1.5, .7) texture { Porcelain } }
union { Slab(-8.0, 8.0, -8.2, .2, 29.5, 30.9, 1.7, .45) texture { Porcelain } }
union { cylinder { <-5, 26.6, -7.7> <-5, 26.6, -8.3> .8 } cylinder { <-5, 26.6, -8.5> <-2.4, 26.3, -8.7> .26 } sphere { <-2.4, 26.3, -8.7> .36 } sphere { <-5, 26.6, -8.4> .5 } texture { Chrome } }
Shot(<0, 14.6, -12>, 100, -31, 13, 27)
