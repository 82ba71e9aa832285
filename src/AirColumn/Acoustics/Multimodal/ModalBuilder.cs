using AirColumn.Acoustics.Elements;
using AirColumn.Bores;
using AirColumn.Gases;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>Turns the elements of a column into pieces for a number of modes.</summary>
internal sealed class ModalBuilder
{
    private readonly RadialBasis basis;
    private readonly Column column;
    private readonly List<ModalPiece> pieces = [];
    private readonly List<double> densities = []; // on the near side of each, kg/m³
    private double? radius; // on the near side of what was built, m
    private InertanceElement? step; // of which the near side is still to come

    public ModalBuilder(RadialBasis basis, Column column)
    {
        this.basis = basis;
        this.column = column;
        Gas = column.Elements.OfType<SectionElement>().Last().Gas;
    }

    /// <summary>What fills the near side.</summary>
    public GasConstants Gas { get; private set; }

    /// <summary>From the far end.</summary>
    public ModalPiece[] Pieces()
    {
        for (var i = column.Elements.Length - 1; i >= 0; i--)
        {
            switch (column.Elements[i])
            {
                case SectionElement section:
                    Add(section);
                    break;
                case InertanceElement mass:
                    step = mass;
                    break;
                case SideElement side:
                    Put(new SidePiece(side, Gas.Density));
                    break;
                default:
                    throw new InvalidOperationException($"No modes for {column.Elements[i].GetType().Name}.");
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

    private void Add(SectionElement element)
    {
        var section = element.Section;
        var length = section.LengthMetres;
        if (step is { } mass && radius is { } far)
        {
            var near = section.WallAt(length).Radius;
            Put(new StepPiece(basis, near, far, Gas.Density, Gas.SpeedOfSound, mass.InertanceAt));
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
                    element.Losses
                )
            );
        }
        else
        {
            var highest = 2 * Math.PI * Math.Min(column.CutOnHertz, column.HighestHertz) / Gas.SpeedOfSound;
            foreach (var (from, to, degree) in WallGrid.Of(section, highest).Reverse())
            {
                Put(new WallPiece(basis, section, from, to, degree, Gas, element.Losses));
            }
        }

        radius = section.WallAt(0).Radius;
    }
}
