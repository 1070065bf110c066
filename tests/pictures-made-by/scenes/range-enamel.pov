#declare S = 40;
#include "studio.inc"
#include "range.inc"
Sweep(<.40, .385, .36>)
#declare Cream = Enamel(<.74, .68, .55>)
#declare Top = Enamel(<.74, .68, .55>)
Range(Cream, Brass, Top, 1)
Shot(<0, 18.6, -12>, 138, 24, 13, 27)
