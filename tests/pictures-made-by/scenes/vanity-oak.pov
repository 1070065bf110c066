#declare S = 36;
#include "studio.inc"
Sweep(<.45, .44, .42>)
union { RB(<-18, 8, -20>, <18, 32, 0>, .1) Oak(0, 0) }
#macro Drawer(y0, y1) union { RB(<-17.5, y0, -20.9>, <17.5, y1, -19.9>, .1) Oak(0, 0) translate <0, 0, 0> } #end
Drawer(8.4, 19.6) Drawer(20.0, 31.4)
BarPull(<0, 17.4, -20.9>, 9, .28, Nickel, 0) BarPull(<0, 29.2, -20.9>, 9, .28, Nickel, 0)
union { RB(<-18.5, 32, -21.5>, <18.5, 33.2, 0>, .12) texture { Map("kitchen/photos/counter-quartz.jpg", 60, 45, 2, 0) finish { Satin } } }
#macro Leg(X, Z) cylinder { <X, 0, Z> <X, 8.1, Z> .9 Oak(0, 1) } #end
Leg(-16.8, -18.8) Leg(16.8, -18.8) Leg(-16.8, -1.4) Leg(16.8, -1.4)
lathe { cubic_spline 8, <-.5, 33.2>, <0, 33.2>, <4.8, 33.3>, <7.2, 35.4>, <7.8, 37.6>, <7.5, 37.7>, <6.6, 35.4>, <0, 33.9> sturm translate z * -10.5 texture { Porcelain } }
Shot(<0, 19.2, -10>, 118, -26, 10, 27)
