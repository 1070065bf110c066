#declare S = 4;
#include "studio.inc"
Backwall(InkC, <0, 0, 0>)
Shaker(-1.3, 16, -16, 14, -.8, 2.6, Ink)
Shaker(-16, -1.42, -16, 14, -.8, 2.6, Ink)
union {
  lathe { cubic_spline 10, <.62, -.3>, <.62, 0>, <.58, .1>, <.30, .18>, <.24, .5>, <.34, .74>, <.66, .92>, <.60, 1.16>, <.0, 1.26>, <-.3, 1.24> sturm rotate x * -90 translate <0, 0, -.8> }
  texture { Brass } }
Shot(<0, 0, -1.1>, 9, 27, 14, 27)
