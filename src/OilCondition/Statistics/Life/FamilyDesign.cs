using System.Buffers;

namespace OilCondition.Statistics;

/// <summary>All movements of the family over the dates of some readings: what reading them takes and does not depend on what was read.</summary>
internal sealed class FamilyDesign : IDisposable
{
    private readonly double[] positions;
    private readonly DriftDesign?[] drifts;

    // Rented: a night's run designs the family for thousands of machines.
    private readonly (FourDesign Design, int FirstRow)[] fours;
    private readonly Lanes[] rows;

    /// <summary>The family over some times.</summary>
    /// <param name="positions">The times, as parts of that from the first to the last.</param>
    public FamilyDesign(double[] positions)
    {
        this.positions = positions;
        var groups = DegradationPrior.Fours;
        fours = ArrayPool<(FourDesign Design, int FirstRow)>.Shared.Rent(groups.Length);
        drifts = new DriftDesign?[groups.Length];
        Span<Movement> movements = stackalloc Movement[LaneMath.Width];
        rows = ArrayPool<Lanes>.Shared.Rent(RowsOfAll(positions.Length));
        var taken = 0;
        for (var g = 0; g < groups.Length; g++)
        {
            for (var i = 0; i < groups[g].Length; i++)
            {
                movements[i] = DegradationPrior.Family[groups[g][i]];
            }

            if (movements[0].Kind == MovementKind.DriftWalks)
            {
                drifts[g] = DriftDesign.Of(movements[0], positions);
            }
            else
            {
                var four = movements[..groups[g].Length];
                fours[g] = (FourDesign.Of(four, positions, rows.AsSpan(taken)), taken);
                taken += FourDesign.RowsOf(four, positions.Length);
            }
        }
    }

    /// <summary>The times.</summary>
    public ReadOnlySpan<double> Positions => positions;

    /// <summary>Whether it is of these times.</summary>
    public bool IsOver(ReadOnlySpan<double> times) => times.SequenceEqual(positions);

    /// <summary>One of <see cref="DegradationPrior.Fours"/> that is no drift that walks.</summary>
    public ref readonly FourDesign Four(int group) => ref fours[group].Design;

    /// <summary>Reads readings through one of <see cref="DegradationPrior.Fours"/> that is no drift that walks.</summary>
    public FourReadings Read(int group, ReadOnlySpan<double> values)
    {
        ref readonly var four = ref fours[group];
        return four.Design.Read(rows.AsSpan(four.FirstRow), values);
    }

    /// <summary>The drift that walks which is one of <see cref="DegradationPrior.Fours"/>.</summary>
    public DriftDesign Drift(int group) => drifts[group]!;

    /// <summary>Gives back the room; nothing can be read any more.</summary>
    public void Dispose()
    {
        foreach (var drift in drifts)
        {
            drift?.Dispose();
        }

        ArrayPool<(FourDesign Design, int FirstRow)>.Shared.Return(fours);
        ArrayPool<Lanes>.Shared.Return(rows);
    }

    private static int RowsOfAll(int count)
    {
        var sum = 0;
        foreach (var four in DegradationPrior.Fours)
        {
            sum += FourDesign.RowsOf([DegradationPrior.Family[four[0]]], count);
        }

        return sum;
    }
}
