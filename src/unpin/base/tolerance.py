"""The few tolerances of the program, each with its reason. Exact arithmetic decides everything else."""

NEARLY_CRITICAL = 1000.0
"""A force more than this many times the largest load is called nearly critical: the geometry is almost a mechanism."""

OFF_BALANCE = 0.005
"""A load that misses balance by less than this share of the largest is put down to rounded data, and said so."""

IDLE = 5e-12
"""Work of the loads in a motion, as a share of the largest load, that is what is left of sines to sixty digits: none."""

NEARLY_CONCURRENT = 0.005
"""Three lines that miss one point by less than this share of the figure's size are called nearly concurrent."""

TOUCHES = 1e-6
"""Two strands of a cord that meet within this share of their length from an end touch there and do not cross."""

OFF_ARC = 0.005
"""An end of a curved slot may be so far off the arc through its pin, as a share of the radius: points are typed rounded."""
