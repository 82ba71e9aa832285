using System.Numerics;
using AirColumn.Acoustics.Interpolation;
using AirColumn.Acoustics.Radiation;
using AirColumn.Acoustics.Vectors;
using MathNet.Numerics;

namespace AirColumn.Acoustics.Junctions;

/// <summary>
/// Steps of radius so close together that the radial modes of one reach the next: the air mass that each has beyond what it has by itself.
/// </summary>
/// <remarks>
/// <para>
/// Mode matching. Below their cut-on the radial modes hold kinetic energy only, and their flows are those that make it least (Kelvin's theorem).
/// A mode with the flows W and V at the ends of a pipe of radius a and length L holds
/// </para>
/// <code>
/// ½ρ·Z·((W² + V²)·coth κL − 2WV/sinh κL),  Z = 1/(πa²κ), κ² = γ²/a² − k², J₁(γ) = 0.
/// </code>
/// <para>
/// On the wider side of a step the flows are W₂ = F₀·U + Fᵀ·W₁, U the plane wave's, W₁ those on the narrower side, F the overlap of the modes over
/// the narrower disc. The mass of the step is F₀·Z·(W₂·coth κL − V₂/sinh κL). The same with all pipes infinitely long, so that each step is by itself, is
/// taken off, and with it most of what a finite number of modes leaves out: <see cref="StepInertance"/> has that exactly.
/// </para>
/// <para>
/// The pipes before the first and behind the last step are taken to be long. All pipes have modes up to the same wavenumber, so that both
/// sides resolve an edge alike, and the last of them fade out (<see cref="EvanescentPipe"/>), so that the masses change smoothly with all dimensions.
/// </para>
/// </remarks>
internal sealed class StepChain
{
    /// <summary>The radii after which the modes have died away: a ten-thousandth of a step's mass is left, a hundredth at 0.9 of the cut-on.</summary>
    public const double Reach = 3;

    // Highest wavenumber across of the modes, times the radius of the widest pipe: that of sixteen modes to that of all there are.
    private const double Coarsest = 16 * Math.PI;
    private const double Finest = RadialZeros.Count * Math.PI;

    private const double NarrowestResolved = 8; // the same times the radius of the narrowest pipe, at least

    private readonly double[] radii;
    private readonly double[] lengths; // of the pipes between steps
    private readonly double highest; // wavenumber across, 1/m
    private readonly int[] modes; // of each pipe, without the plane one
    private readonly double[][] overlap; // F of each step, row by row
    private readonly double[][] plane; // F₀

    private StepChain(double[] radii, double[] lengths)
    {
        (this.radii, this.lengths) = (radii, lengths);
        var widest = radii.Max();
        // High enough to resolve the shortest and the narrowest pipe: the largest of what is asked for, without corners.
        var asked =
            Fourth(Coarsest / widest)
            + lengths.Sum(length => Fourth(2 * Math.PI / length))
            + radii.Sum(radius => Fourth(NarrowestResolved / radius));
        highest = Math.Pow(1 / asked + 1 / Fourth(Finest / widest), -0.25);
        modes = [.. radii.Select(radius => RadialZeros.Gamma.Count(gamma => gamma < highest * radius))];
        overlap = new double[radii.Length - 1][];
        plane = new double[overlap.Length][];
        for (var step = 0; step < overlap.Length; step++)
        {
            (overlap[step], plane[step]) = Overlap(step);
        }
    }

    /// <summary>What its neighbours add to each step.</summary>
    /// <param name="radii">The pipes' radii in a row, m: one more than there are steps, at least three.</param>
    /// <param name="lengths">The lengths of those between steps, m.</param>
    /// <param name="density">ρ, kg/m³.</param>
    /// <param name="speedOfSound">c, m/s.</param>
    public static StepInteraction[] Of(double[] radii, double[] lengths, double density, double speedOfSound)
    {
        const int nodes = StepInteraction.Nodes;
        var chain = new StepChain(radii, lengths);
        var steps = chain.overlap.Length;
        var cutOn = ThinEnd.CutOnKa / radii.Max();
        var values = new double[steps * nodes];
        for (var first = 0; first < nodes; first += RealVectors.Count)
        {
            var from = first;
            var root = RealVectors.Each(lane => StepInteraction.RootAt(Math.Min(from + lane, nodes - 1)));
            var square = cutOn * cutOn * (RealVector.One - root * root);
            var (together, alone) = (chain.Masses(square, true), chain.Masses(square, false));
            for (var step = 0; step < steps; step++)
            {
                var added = density * root * (together[step] - alone[step]);
                for (var lane = 0; lane < RealVectors.Count && first + lane < nodes; lane++)
                {
                    values[step * nodes + first + lane] = added[lane];
                }
            }
        }

        var coefficients = new double[values.Length];
        Chebyshev.Transform(values, nodes, coefficients);
        return
        [
            .. Enumerable
                .Range(0, steps)
                .Select(step => new StepInteraction(
                    coefficients[(step * nodes)..((step + 1) * nodes)],
                    cutOn * speedOfSound
                )),
        ];
    }

    private static double Fourth(double x) => x * x * x * x;

    private int Narrow(int step) => radii[step] < radii[step + 1] ? step : step + 1;

    private int Wide(int step) => radii[step] < radii[step + 1] ? step + 1 : step;

    // ∫2ξ·φₙ(ξ)·φₘ(βξ)dξ over the narrower disc, φₙ = J₀(γₙξ)/J₀(γₙ), β = a₁/a₂ (DLMF 10.22.5).
    private (double[] Modes, double[] Plane) Overlap(int step)
    {
        var (narrow, wide) = (Narrow(step), Wide(step));
        var ratio = radii[narrow] / radii[wide];
        var (rows, columns) = (modes[narrow], modes[wide]);
        var (matrix, even) = (new double[rows * columns], new double[columns]);
        for (var m = 0; m < columns; m++)
        {
            var x = ratio * RadialZeros.Gamma[m];
            var part = 2 * x * SpecialFunctions.BesselJ(1, x) / RadialZeros.J0[m];
            even[m] = part / (x * x);
            for (var n = 0; n < rows; n++)
            {
                var gamma = RadialZeros.Gamma[n];
                var apart = x * x - gamma * gamma;
                // At a zero of J₁ both vanish; the modes are the same there.
                matrix[n * columns + m] =
                    Math.Abs(apart) > 1e-6 * gamma * gamma
                        ? part / apart
                        : RadialZeros.J0[n] / RadialZeros.J0[m];
            }
        }

        return (matrix, even);
    }

    // Of each step over the density, 1/m, at k².
    private RealVector[] Masses(RealVector square, bool together)
    {
        var pipes = new EvanescentPipe[radii.Length];
        for (var j = 0; j < pipes.Length; j++)
        {
            var isBetween = together && j > 0 && j < pipes.Length - 1;
            pipes[j] = new EvanescentPipe(
                radii[j],
                isBetween ? lengths[j - 1] : double.PositiveInfinity,
                modes[j],
                highest,
                square,
                j > 0 && j == Wide(j - 1),
                j < overlap.Length && j == Wide(j)
            );
        }

        var flows = Flows(pipes, together);
        var masses = new RealVector[overlap.Length];
        for (var step = 0; step < masses.Length; step++)
        {
            var wide = Wide(step);
            var neighbour = wide == step ? step - 1 : step + 1;
            var near = Near(pipes, wide, step);
            var here = End(step, wide, flows[step]);
            var there =
                together && neighbour >= 0 && neighbour < masses.Length
                    ? End(neighbour, wide, flows[neighbour])
                    : new RealVector[here.Length];
            for (var m = 0; m < here.Length; m++)
            {
                masses[step] += plane[step][m] * (near[m] * here[m] - pipes[wide].Far[m] * there[m]);
            }
        }

        return masses;
    }

    private static RealVector[] Near(EvanescentPipe[] pipes, int pipe, int step) =>
        pipe == step ? pipes[pipe].AtOutlet : pipes[pipe].AtInlet;

    // W at the end of a pipe that lies at a step, for the narrower side's flows there.
    private RealVector[] End(int step, int pipe, RealVector[] flows)
    {
        if (pipe == Narrow(step))
        {
            return flows;
        }

        var end = Array.ConvertAll(plane[step], value => Vector.Create(value));
        for (var n = 0; n < flows.Length; n++)
        {
            for (var m = 0; m < end.Length; m++)
            {
                end[m] += overlap[step][n * end.Length + m] * flows[n];
            }
        }

        return end;
    }

    // Those of least energy for a plane flow of 1. The energy's matrix is symmetric and positive, and links each step to the next only:
    // taken out step by step.
    private RealVector[][] Flows(EvanescentPipe[] pipes, bool together)
    {
        var count = overlap.Length;
        var (blocks, links, flows) = (
            new RealVector[count][],
            new RealVector[count][],
            new RealVector[count][]
        );
        for (var step = 0; step < count; step++)
        {
            (blocks[step], flows[step]) = Own(
                step,
                Near(pipes, Narrow(step), step),
                Near(pipes, Wide(step), step)
            );
        }

        for (var step = 0; step < count; step++)
        {
            var n = flows[step].Length;
            if (together && step + 1 < count)
            {
                links[step] = Link(step, pipes[step + 1], flows);
            }

            PositiveMatrix.Factor(blocks[step], n);
            PositiveMatrix.Forward(blocks[step], n, flows[step], 1);
            if (links[step] is { } link)
            {
                var next = flows[step + 1].Length;
                PositiveMatrix.Forward(blocks[step], n, link, next);
                for (var l = 0; l < n; l++)
                {
                    for (var i = 0; i < next; i++)
                    {
                        var factor = link[l * next + i];
                        flows[step + 1][i] -= factor * flows[step][l];
                        PositiveMatrix.Subtract(
                            factor,
                            link.AsSpan(l * next, i + 1),
                            blocks[step + 1].AsSpan(i * next, i + 1)
                        );
                    }
                }
            }
        }

        for (var step = count - 1; step >= 0; step--)
        {
            if (links[step] is { } link)
            {
                var next = flows[step + 1].Length;
                for (var l = 0; l < flows[step].Length; l++)
                {
                    for (var i = 0; i < next; i++)
                    {
                        flows[step][l] -= link[l * next + i] * flows[step + 1][i];
                    }
                }
            }

            PositiveMatrix.Backward(blocks[step], flows[step].Length, flows[step]);
        }

        return flows;
    }

    // Of a step by itself: the matrix (its lower triangle), and what the plane flow asks for.
    private (RealVector[] Matrix, RealVector[] Right) Own(int step, RealVector[] narrow, RealVector[] wide)
    {
        var (f, n, columns) = (overlap[step], narrow.Length, wide.Length);
        var (matrix, right) = (new RealVector[n * n], new RealVector[n]);
        for (var i = 0; i < n; i++)
        {
            for (var m = 0; m < columns; m++)
            {
                var pressure = f[i * columns + m] * wide[m];
                right[i] -= pressure * plane[step][m];
                for (var j = 0; j <= i; j++)
                {
                    matrix[i * n + j] += pressure * f[j * columns + m];
                }
            }

            matrix[i * n + i] += narrow[i];
        }

        return (matrix, right);
    }

    // Of a step with the next one, through the pipe between; adds what the plane flow at either asks of the other.
    private RealVector[] Link(int step, EvanescentPipe pipe, RealVector[][] right)
    {
        var (here, planeHere) = EndOf(step, step + 1);
        var (next, planeNext) = EndOf(step + 1, step + 1);
        var (rows, columns, modes) = (right[step].Length, right[step + 1].Length, pipe.Far.Length);
        var link = new RealVector[rows * columns];
        for (var i = 0; i < rows; i++)
        {
            for (var m = 0; m < modes; m++)
            {
                var pressure = here[i * modes + m] * pipe.Far[m];
                right[step][i] += pressure * planeNext[m];
                for (var j = 0; j < columns; j++)
                {
                    link[i * columns + j] -= pressure * next[j * modes + m];
                }
            }
        }

        for (var j = 0; j < columns; j++)
        {
            for (var m = 0; m < modes; m++)
            {
                right[step + 1][j] += next[j * modes + m] * planeHere[m] * pipe.Far[m];
            }
        }

        return link;
    }

    // What the flows on a step's narrower side, and the plane one, are to the modes of a pipe beside it.
    private (double[] Modes, double[] Plane) EndOf(int step, int pipe)
    {
        if (pipe == Wide(step))
        {
            return (overlap[step], plane[step]);
        }

        var n = modes[pipe];
        var same = new double[n * n];
        for (var i = 0; i < n; i++)
        {
            same[i * n + i] = 1;
        }

        return (same, new double[n]);
    }
}
