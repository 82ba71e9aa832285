"""The T of one side hole from finite elements in three dimensions, without losses: its series and shunt lengths.

Debian: apt-get install gmsh python3-getfem python3-numpy; then for example
    /usr/bin/python3 hole.py --delta 0.6 --t 0.5333 --ka 0.007,0.2,0.5
prints lines of tests/AirColumn.Tests/Reference/tone-hole-field.csv. Lengths are in radii of the bore, c = rho = 1, exp(+j w t).
"""

import argparse
import pathlib
import subprocess
import tempfile

import getfem
import numpy

ARM, SPHERE = 3.0, 8.0  # radii of the bore
END, MIDDLE, OUTSIDE = 1, 2, 3  # regions of hole.geo
DEGREE = 2


def mesh(geometry, **numbers):
    """Curved tetrahedra of second order."""
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder, "hole.msh")
        options = [text for name, value in numbers.items() for text in ("-setnumber", name, str(value))]
        geometry = pathlib.Path(__file__).with_name(geometry)
        subprocess.run(
            ["gmsh", "-3", "-order", "2", str(geometry), "-o", str(file), "-v", "1", *options], check=True
        )
        return getfem.Mesh("import", "gmsh", str(file))


class Field:
    """The pressure in a part of the T, cut at its planes of symmetry, for a velocity given at the end of its arm."""

    def __init__(self, grid, is_open):
        getfem.util("trace level", 0)
        self.elements = getfem.MeshFem(grid, 1)
        self.elements.set_classical_fem(DEGREE)
        self.rule = getfem.MeshIm(grid, 2 * DEGREE + 2)
        self.model = getfem.Model("real")
        self.model.add_fem_variable("p", self.elements)
        self.stiffness = self.assemble(2, "Grad_Test_p.Grad_Test2_p")
        self.mass = self.assemble(2, "Test_p*Test2_p")
        self.sphere = self.assemble(2, "Test_p*Test2_p", OUTSIDE) if is_open else None
        self.load = self.assemble(1, "Test_p", END)

    def assemble(self, order, expression, region=-1):
        return getfem.asm("generic", self.rule, order, expression, region, self.model)

    def outside(self, ka):
        """What a spherical wave obeys on the sphere."""
        return scaled(self.sphere, 1j * ka + 1 / SPHERE)

    def impedance(self, ka, is_odd):
        """At the axis of the hole, over rho c/(pi a^2), for p = 0 (odd) or a rigid wall (even) in the plane z = 0."""
        matrix = getfem.Spmat("add", scaled(self.stiffness, 1), scaled(self.mass, -ka * ka))
        if self.sphere is not None:
            matrix = getfem.Spmat("add", matrix, self.outside(ka))
        kept = numpy.arange(self.elements.nbdof())
        if is_odd:
            kept = numpy.setdiff1d(kept, self.elements.basic_dof_on_region(MIDDLE))
            matrix = getfem.Spmat("copy", matrix, kept, kept)
        matrix.to_csc()
        pressure = numpy.ravel(getfem.linsolve_mumps(matrix, self.load[kept].astype(complex)))
        z = 1j * ka * (self.load[kept] @ pressure) / self.load.sum()
        turn = numpy.tan(ka * ARM)
        return (z - 1j * turn) / (1 - 1j * z * turn)


def scaled(matrix, factor):
    copy = getfem.Spmat("copy", matrix)
    copy.to_complex()
    copy.scale(complex(factor))
    return copy


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--delta", type=float, default=0.6, help="radius of the hole over that of the bore")
    options.add_argument("--t", type=float, default=0.5333, help="height of the hole over the radius of the bore")
    options.add_argument("--closed", action="store_true", help="closed by a rigid lid")
    options.add_argument("--fineness", type=float, default=1.0, help="a factor of all sizes of elements")
    options.add_argument("--ka", default="0.007,0.2,0.5", help="with commas between")
    given = options.parse_args()
    numbers = {"d": given.delta, "t": given.t, "L": ARM, "R": SPHERE, "f": given.fineness}
    field = Field(mesh("hole.geo", isOpen=int(not given.closed), **numbers), not given.closed)
    for ka in map(float, given.ka.split(",")):
        # The even field sees twice the shunt, the odd one half the series mass.
        shunt, series = field.impedance(ka, False) / 2, 2 * field.impedance(ka, True)
        middle = (shunt - series / 4) * given.delta**2
        print(
            "closed" if given.closed else "open",
            given.delta,
            given.t,
            ka,
            f"{series.imag / ka / given.delta**3:.5f}",
            f"{middle.imag / ka / given.delta:.5f}",
            "0" if given.closed else f"{middle.real:.4e}",
            sep=",",
            flush=True,
        )


if __name__ == "__main__":
    main()
