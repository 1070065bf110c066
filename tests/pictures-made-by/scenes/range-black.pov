#declare S = 40;
#include "studio.inc"
#include "range.inc"
Sweep(<.42, .42, .415>)
#declare Night = Enamel(<.012, .012, .013>)
Range(Night, Nickel, SteelH, 2)
Shot(<0, 18.6, -12>, 138, -20, 15, 27)
