#declare S = 36;
#include "studio.inc"
Sweep(<.47, .455, .43>)
box { <-12, 0, -21> <12, 4, -2> pigment { rgb .012 } }
union { RB(<-11.9, 3.6, -23>, <11.9, 33.9, 0>, .1) texture { SteelH } }
Shaker(-11.9, 11.9, 4.2, 33.8, -24, 2.6, Ink)
BarPull(<0, 31.5, -24>, 12, .3, Brass, 0)
box { <-60, 34.55, -25.23> <60, 35.95, -25.1> Schist(0) }
// the counter and the neighbours
union { RB(<-60, 34.5, -25.2>, <60, 36, 0>, .1) Schist(2) }
Shaker(-30.2, -12.2, 4.2, 33.8, -24, 2.6, Ink) Shaker(12.2, 30.2, 24.2, 33.8, -24, 2.6, Ink) Shaker(12.2, 30.2, 4.2, 23.8, -24, 2.6, Ink)
box { <-60, 4, -23.4> <60, 34.5, -1> pigment { rgb InkC * .6 } } box { <-60, 0, -21> <60, 4, -2> pigment { rgb InkC * .6 } }
BarPull(<-14.2, 28, -24>, 6, .26, Brass, 1) BarPull(<21.2, 29, -24>, 6, .26, Brass, 0) BarPull(<21.2, 20.5, -24>, 6, .26, Brass, 0)
union { cylinder { <-4, 36, -14> <-4, 36.3, -14> 4 } lathe { linear_spline 6, <0, 0>, <2.2, 0>, <4.6, 2.2>, <4.4, 2.3>, <2, .4>, <0, .4> translate <-4, 36.2, -14> } texture { Porcelain } }
Shot(<0, 20.5, -14>, 106, -22, 12, 30)
