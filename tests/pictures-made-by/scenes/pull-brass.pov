#declare S = 5;
#include "studio.inc"
Backwall(InkC * 1.0, <0, 0, 0>)
Shaker(-9, 9, -1.6, 14, -.8, 2.4, Ink)
Shaker(-9, 9, -14, -1.75, -.8, 2.4, Ink)
BarPull(<0, -.5, -.8>, 6, .26, Brass, 0)
union { torus { .27, .05 rotate z * 90 translate <-2.3, -.5, -2.05> } torus { .27, .05 rotate z * 90 translate <2.3, -.5, -2.05> } texture { Brass } }
Shot(<-.2, -.4, -1>, 15, -24, 22, 28)
