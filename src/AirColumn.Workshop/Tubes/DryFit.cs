using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>
/// A tube put together by hand, without cement. Tapered sockets stop its pipes short, so the tube is longer and sounds lower than when
/// cemented. Immutable.
/// </summary>
/// <remarks>
/// A standard socket is narrower at the bottom than its pipe. So a pipe goes in easily for a third to two thirds of the depth, and reaches
/// home only with cement (source: ASTM F3328, scope). The place where it stops follows from the sizes. A tenth of a millimetre of diameter
/// is about 6 mm of depth, so a measurement is far better than the computation.
/// </remarks>
public sealed class DryFit
{
    // How well the eye and a rule measure how far all pipes stand out together, mm to either side: a choice.
    private const double Measuring = 1;

    private readonly TubeAssembly home;

    private DryFit(TubeAssembly home, IReadOnlyList<DryJoint> joints, bool isMeasured)
    {
        (this.home, Joints, IsMeasured) = (home, joints, isMeasured);
        Tube = With(joint => joint.StopsShort.Millimeters);
    }

    /// <summary>The sockets that stop their pipe short, or may do so.</summary>
    public IReadOnlyList<DryJoint> Joints { get; }

    /// <summary>The same parts, with the pipes pushed in by hand.</summary>
    public TubeAssembly Tube { get; }

    /// <summary>True if the distance was measured, not computed from the sizes of pipes and sockets.</summary>
    public bool IsMeasured { get; }

    /// <summary>The distance by which all pipes together stop short of home.</summary>
    public Length InAll => Sum(joint => joint.StopsShort);

    /// <summary>The least distance by which all pipes together may stop short of home, within the tolerances.</summary>
    public Length Least => Sum(joint => joint.Least);

    /// <summary>The greatest distance by which all pipes together may stop short of home, within the tolerances.</summary>
    public Length Most => Sum(joint => joint.Most);

    /// <summary>The same tube with a measured distance in place of the computed one, shared among the joints in proportion.</summary>
    /// <param name="stopsShort">The distance by which all pipes together stop short of home: from 0 to the depth of all sockets.</param>
    /// <returns>The measured fit.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is out of range.</exception>
    public DryFit Measured(Length stopsShort)
    {
        var room = Joints.Select(Room).ToList();
        Require.InRange(stopsShort.Millimeters, 0, room.Sum(), "mm", nameof(stopsShort));
        // In proportion to what was computed, but never out of a socket.
        var computed = Joints.Select(joint => joint.StopsShort.Millimeters).ToList();
        var isScaled =
            InAll.Millimeters > 0
            && computed
                .Zip(room)
                .All(pair => pair.First / computed.Sum() * stopsShort.Millimeters <= pair.Second);
        var shares = isScaled ? computed : room;
        return new DryFit(
            home,
            [
                .. Joints.Zip(
                    shares,
                    (joint, share) =>
                    {
                        var part = share / shares.Sum();
                        var stops = part * stopsShort.Millimeters;
                        return joint with
                        {
                            StopsShort = Length.FromMillimeters(stops),
                            Least = Length.FromMillimeters(Math.Max(0, stops - part * Measuring)),
                            Most = Length.FromMillimeters(Math.Min(Room(joint), stops + part * Measuring)),
                            StandardDeviation = Length.FromMillimeters(part * Measuring / Math.Sqrt(3)),
                        };
                    }
                ),
            ],
            true
        );
    }

    /// <summary>The rise of the first resonance from dry to home, its uncertainty, and the note to trim to while dry.</summary>
    /// <param name="cut">The length of the open pipe.</param>
    /// <param name="air">The air in the tube.</param>
    /// <param name="target">The wanted note with all joints home.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The tuning; null if the tube, dry or home, has no resonance.</returns>
    /// <exception cref="ArgumentException">The cut is too short for the parts pushed into the pipe.</exception>
    public DryTuning? Tuning(
        Length cut,
        Air air,
        Frequency target,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(air);
        if (
            First(home, cut, air, cancellationToken) is not { } there
            || First(Tube, cut, air, cancellationToken) is not { } dry
        )
        {
            return null;
        }

        var variance = 0.0;
        // One pipe is as wide at both its ends; what was measured was measured in all.
        foreach (var piece in Joints.Select(joint => IsMeasured ? 0 : home.PieceOf(joint.Pipe)).Distinct())
        {
            Frequency? Moved(int sign) =>
                First(
                    With(joint =>
                        joint.StopsShort.Millimeters
                        + (
                            IsMeasured || home.PieceOf(joint.Pipe) == piece
                                ? sign * joint.StandardDeviation.Millimeters
                                : 0
                        )
                    ),
                    cut,
                    air,
                    cancellationToken
                );

            if (Moved(1) is not { } longer || Moved(-1) is not { } shorter)
            {
                return null;
            }

            // Not beyond home: there one side moves less.
            var cents = Math.Max(Math.Abs(Cents.Between(dry, longer)), Math.Abs(Cents.Between(dry, shorter)));
            variance += cents * cents;
        }

        var rise = Cents.Between(dry, there);
        return new DryTuning(this, rise, Math.Sqrt(variance), target * Cents.ToRatio(-rise));
    }

    /// <summary>The dry tube of an assembly; null where no socket may hold its pipe out.</summary>
    internal static DryFit? Of(TubeAssembly tube)
    {
        var joints = new List<DryJoint>();
        for (var i = 0; i < tube.Parts.Count; i++)
        {
            if (tube.Parts[i] is not JoinPart join)
            {
                continue;
            }

            if (join.Before is not null && tube.PipeInSocket(tube.PlaceBeside(i, -1)) is not null)
            {
                joints.Add(DryJoint.Of(tube, i, true));
            }

            if (join.After is not null && tube.PipeInSocket(tube.PlaceBeside(i, 1)) is not null)
            {
                joints.Add(DryJoint.Of(tube, i, false));
            }
        }

        joints.RemoveAll(joint => joint.Most <= Length.Zero);
        return joints.Count > 0 ? new DryFit(tube, joints, false) : null;
    }

    private static Frequency? First(
        TubeAssembly tube,
        Length cut,
        Air air,
        CancellationToken cancellationToken
    ) =>
        TubeBuilder.ColumnOf(tube.Assemble(cut), air).FirstResonances(1, cancellationToken) is [var first]
            ? first.Frequency
            : null;

    private TubeAssembly With(Func<DryJoint, double> stops)
    {
        var parts = home.Parts.ToArray();
        foreach (var joint in Joints)
        {
            var join = (JoinPart)parts[joint.Fitting];
            var (before, after) = (join.Before?.Gap ?? Length.Zero, join.After?.Gap ?? Length.Zero);
            var more = Length.FromMillimeters(Math.Clamp(stops(joint), 0, Room(joint)));
            parts[joint.Fitting] = joint.IsBefore
                ? join.WithGaps(before + more, after)
                : join.WithGaps(before, after + more);
        }

        return new TubeAssembly(parts, home.Wall);
    }

    // How far a pipe can stop short and still be in its socket, mm.
    private double Room(DryJoint joint)
    {
        var join = (JoinPart)home.Parts[joint.Fitting];
        var socket = (joint.IsBefore ? join.Before : join.After)!;
        return socket.Depth.Millimeters - socket.Gap.Millimeters;
    }

    private Length Sum(Func<DryJoint, Length> of) =>
        Length.FromMillimeters(Joints.Sum(joint => of(joint).Millimeters));

    /// <summary>Number of joints and how far they stop short, in the invariant culture.</summary>
    /// <returns>Number of joints and their total, as text.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Joints.Count} joints stop {InAll.Millimeters:0.#} mm short in all");
}
