using AirColumn.Acoustics.Line;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>Turns the elements of a column into pieces for a number of modes.</summary>
internal sealed class ModalBuilder
{
    private const double SameSlope = 1e-9;

    private readonly RadialBases bases;
    private readonly RadialBasis basis;
    private readonly ColumnModel column;
    private readonly List<ModalPiece> pieces = [];
    private readonly List<double> densities = []; // on the near side of each, kg/m³
    private double? radius; // on the near side of what was built, m
    private SeriesMass? step; // of which the near side is still to come

    public ModalBuilder(RadialBases bases, RadialBasis basis, ColumnModel column)
    {
        this.bases = bases;
        this.basis = basis;
        this.column = column;
        Gas = column.Way.OfType<BoreSegment>().Last().Gas;
    }

    /// <summary>What fills the near side.</summary>
    public GasConstants Gas { get; private set; }

    /// <summary>From the far end.</summary>
    public ModalPiece[] Pieces(CancellationToken cancellationToken)
    {
        for (var i = column.Way.Length - 1; i >= 0; i--)
        {
            cancellationToken.ThrowIfCancellationRequested();
            switch (column.Way[i])
            {
                case BoreSegment section:
                    Add(section, (GoesOn(i - 1, i), GoesOn(i, i + 1)));
                    break;
                case SeriesMass mass:
                    step = mass;
                    break;
                case SideColumn side:
                    Put(new SidePiece(side, Gas.Density, column.Options.RelativeTolerance));
                    break;
                default:
                    throw new InvalidOperationException($"No modes for {column.Way[i].GetType().Name}.");
            }
        }

        return [.. pieces];
    }

    /// <summary>The density on the near side of each piece, kg/m³.</summary>
    public double[] Densities => [.. densities];

    private void Put(ModalPiece piece)
    {
        pieces.Add(piece);
        densities.Add(Gas.Density);
    }

    // Whether the wall goes on smoothly from one part to the next; not past a hole, whose neighbours lie beyond it.
    private bool GoesOn(int near, int far) =>
        near >= 0
        && far < column.Way.Length
        && column.Way[near] is BoreSegment { Section: var before }
        && column.Way[far] is BoreSegment { Section: var after }
        && Math.Abs(before.WallAt(before.LengthMetres).Slope - after.WallAt(0).Slope) < SameSlope;

    private void Add(BoreSegment element, (bool Near, bool Far) isSmooth)
    {
        var section = element.Section;
        var length = section.LengthMetres;
        if (step is { } mass && radius is { } far)
        {
            var near = section.WallAt(length).Radius;
            var finer = bases.Of(basis.Count + StepPiece.Beyond);
            Put(new StepPiece(basis, finer, near, far, Gas.Density, Gas.SpeedOfSound, mass.InertanceAt));
            step = null;
        }

        var before = Gas;
        Gas = element.Gas;
        if (Gas.Density != before.Density)
        {
            Put(new GasPiece(Gas.Density / before.Density));
        }

        if (section is CylinderSection or BendSection)
        {
            Put(
                new PipePiece(
                    basis,
                    section.WallAt(0).Radius,
                    length,
                    section.InertiaFactor,
                    Gas,
                    element.Medium.Wall
                )
            );
        }
        else
        {
            var highest = 2 * Math.PI * Math.Min(column.CutOnHertz, column.HighestHertz) / Gas.SpeedOfSound;
            foreach (var (from, to, degree) in WallGrid.Of(section, highest, isSmooth).Reverse())
            {
                Put(new WallPiece(basis, section, from, to, degree, Gas, element.Medium.Wall));
            }
        }

        radius = section.WallAt(0).Radius;
    }
}
