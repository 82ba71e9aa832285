"""Two equal open holes that hear each other outside, or one hole near an open end, from finite elements in three dimensions, without losses.

Debian: apt-get install gmsh python3-getfem python3-numpy; then for example
    /usr/bin/python3 coupled.py --delta 0.6 --t 0.4 --spacing 3.2 --ka 0.03,0.1,0.2,0.35
prints lines of tests/AirColumn.Tests/Reference/two-holes-field.csv, and with --end 3.2 in place of --spacing lines of hole-near-end-field.csv.
Lengths are in radii of the bore, c = rho = 1, exp(+j w t).
"""

import argparse

import getfem

from hole import ARM, OUTSIDE, Field, mesh, scaled


class OutsideField(Field):
    """Outside, the sphere lets out waves of the first two orders, such as those of two openings in phase and against each other."""

    def __init__(self, grid, radius):
        super().__init__(grid, True)
        self.radius = radius
        self.along = self.assemble(
            2, "Grad_Test_p.Grad_Test2_p-(Grad_Test_p.Normal)*(Grad_Test2_p.Normal)", OUTSIDE
        )

    def outside(self, ka):
        # The second condition of Bayliss, Gunzburger and Turkel: -dp/dr = s p - (Laplacian of p along the sphere)/(2 s).
        s = 1j * ka + 1 / self.radius
        return getfem.Spmat("add", scaled(self.sphere, s), scaled(self.along, 1 / (2 * s)))


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--delta", type=float, default=0.6, help="radius of the hole over that of the bore")
    options.add_argument("--t", type=float, default=0.4, help="height of the hole over the radius of the bore")
    place = options.add_mutually_exclusive_group(required=True)
    place.add_argument("--spacing", type=float, help="of the axes of two holes; 0 is one hole alone")
    place.add_argument("--end", type=float, help="the open end from the axis of one hole")
    options.add_argument("--sphere", type=float, default=36.0, help="its radius")
    options.add_argument("--fineness", type=float, default=1.0, help="a factor of all sizes of elements")
    options.add_argument("--ka", default="0.03,0.1,0.2,0.35", help="with commas between")
    given = options.parse_args()
    ends = given.end is not None
    distance = given.end if ends else given.spacing / 2
    numbers = {"d": given.delta, "t": given.t, "h": distance, "ends": int(ends), "L": ARM, "R": given.sphere}
    field = OutsideField(mesh("coupled.geo", f=given.fineness, **numbers), given.sphere)
    for ka in map(float, given.ka.split(",")):
        if ends:
            z = field.impedance(ka, False)
            r = (z - 1) / (z + 1)
            results = f"{r.real:.7f},{r.imag:.7f}"
        else:
            even, odd = field.impedance(ka, False), field.impedance(ka, True)
            results = f"{even.real:.5e},{even.imag:.6e},{odd.real:.5e},{odd.imag:.6e}"
        print(given.delta, given.t, given.end if ends else given.spacing, ka, results, sep=",", flush=True)


if __name__ == "__main__":
    main()
