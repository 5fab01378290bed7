using System.Buffers;
using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Prognosis;

/// <summary>The first of several limits to be crossed, and the measurand that leads.</summary>
/// <remarks>
/// The forecasts are taken as independent of one another: F(t) = 1 − Π (1 − Fi(t)), chance that i is first = ∫ Π over the others of (1 − Fj) dFi.
/// Measurands that age together are not independent; the earliest date is then later than stated here: the error is on the safe side.
/// A limit that is crossed already comes first for certain; several such share equally. One that is rather crossed by now than not, unseen since its last reading,
/// counts with that chance. Forecasts with too few readings do not count.
/// </remarks>
public sealed class FirstCrossing
{
    private readonly CrossingLaw law;
    private readonly DateTimeOffset asOf;

    private FirstCrossing(
        DateTimeOffset asOf,
        CrossingLaw law,
        IReadOnlyList<(RemainingLife Life, double Chance)> shares,
        bool isCrossed
    )
    {
        this.asOf = asOf;
        this.law = law;
        Shares = shares;
        IsCrossed = isCrossed;
    }

    /// <summary>Each limit with its chance of being the first within the horizon, the leader first. Empty where nothing can be forecast.</summary>
    public IReadOnlyList<(RemainingLife Life, double Chance)> Shares { get; }

    /// <summary>Whether a limit is crossed already.</summary>
    public bool IsCrossed { get; }

    /// <summary>The chance that no limit is crossed within <see cref="LifeForecast.HorizonYears"/> years.</summary>
    public double ChanceOfNone => IsCrossed ? 0 : 1 - ChanceBefore(asOf.AddDays(LifeForecast.HorizonDays));

    /// <summary>Finds the first of several limits.</summary>
    /// <param name="lives">Forecasts of one machine, all made for the same now.</param>
    /// <param name="asOf">Now; in the years 1900 to 2199.</param>
    /// <returns>The first crossing.</returns>
    /// <exception cref="ArgumentException">A forecast was made for another now, or now lies outside its range.</exception>
    public static FirstCrossing Of(IReadOnlyList<RemainingLife> lives, DateTimeOffset asOf)
    {
        Guard.NotNull(lives);
        Guard.Moment(asOf);
        RemainingLife.Forecast[] open = [.. lives.OfType<RemainingLife.Forecast>()];
        if (open.Any(one => one.Crossing.AsOf != asOf))
        {
            throw new ArgumentException("lives holds a forecast that was made for another now.", nameof(lives));
        }

        using var race = new Race(open);
        var common = CrossingLaw.Of(race.DecidedWithin, LifeForecast.HorizonDays);
        RemainingLife[] crossed = [.. lives.OfType<RemainingLife.AlreadyCrossed>()];
        return crossed.Length > 0
            ? new FirstCrossing(
                asOf,
                common,
                [.. crossed.Select(life => ((RemainingLife)life, 1.0 / crossed.Length))],
                isCrossed: true
            )
            : new FirstCrossing(asOf, common, race.Shares(), isCrossed: false);
    }

    /// <summary>The chance that any limit has been crossed by a moment.</summary>
    /// <param name="at">The moment.</param>
    /// <returns>0 to 1.</returns>
    public double ChanceBefore(DateTimeOffset at) =>
        IsCrossed ? 1 : law.ChanceBefore(Math.Max(0, (at - asOf).TotalDays));

    /// <summary>The moment by which the first limit has been crossed with a chance.</summary>
    /// <param name="chance">The chance, above 0 and below 1.</param>
    /// <param name="at">The moment; now where a limit is crossed already or the chance is not reached.</param>
    /// <returns>Whether the chance is reached within the horizon.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The chance is not between 0 and 1.</exception>
    public bool TryAt(double chance, out DateTimeOffset at)
    {
        Guard.OpenUnitInterval(chance);
        var found = law.TryTime(chance, 0, out var days);
        at = IsCrossed || !found ? asOf : asOf.AddDays(days);
        return IsCrossed || found;
    }

    /// <summary>Which limit leads, and how surely.</summary>
    /// <returns>For example <c>acid number to 0.4 mgKOH/g first with 62 % chance</c>.</returns>
    public override string ToString() =>
        Shares.Count == 0
            ? "nothing to forecast"
            : $"{Shares[0].Life.Series.Measurand.Name} to {PlainText.Reported(Shares[0].Life.Limit)} {Shares[0].Life.Series.Measurand.Unit}".TrimEnd()
                + (IsCrossed ? " passed already" : $" first with {PlainText.Number(100 * Shares[0].Chance)} % chance");

    /// <summary>Several limits, and at each time that was asked for the chance of each to have been crossed.</summary>
    private sealed class Race(RemainingLife.Forecast[] lives) : IDisposable
    {
        /// <summary>Times of all but the longest tables.</summary>
        private const int RoomForMost = 32;

        // By time, a row each: the time, then the chances.
        private readonly int width = 1 + lives.Length;
        private double[] rows = ArrayPool<double>.Shared.Rent(RoomForMost * (1 + lives.Length));
        private int end;

        /// <summary>The chance that any of them has been crossed.</summary>
        public double DecidedWithin(double days)
        {
            var chances = RowAt(days);
            var intact = 1.0;
            for (var i = 0; i < chances.Length; i++)
            {
                chances[i] = lives[i].Crossing.ChanceWithin(days);
                intact *= 1 - chances[i];
            }

            return 1 - intact;
        }

        /// <summary>The integral over the steps between the times that were seen: the law was asked at every point of its table.</summary>
        public IReadOnlyList<(RemainingLife Life, double Chance)> Shares()
        {
            var first = new double[lives.Length];
            ReadOnlySpan<double> before = new double[lives.Length];
            for (var row = 0; row < end; row += width)
            {
                ReadOnlySpan<double> after = rows.AsSpan(row + 1, lives.Length);
                for (var i = 0; i < first.Length; i++)
                {
                    var others = 1.0;
                    for (var j = 0; j < first.Length; j++)
                    {
                        others *= j == i ? 1 : 1 - (before[j] + after[j]) / 2;
                    }

                    first[i] += (after[i] - before[i]) * others;
                }

                before = after;
            }

            return
            [
                .. lives
                    .Select((life, i) => ((RemainingLife)life, Chance: Math.Min(1, Math.Max(0, first[i]))))
                    .OrderByDescending(share => share.Chance),
            ];
        }

        public void Dispose() => ArrayPool<double>.Shared.Return(rows);

        /// <summary>Makes room for the chances at a time among those of earlier and later ones.</summary>
        private Span<double> RowAt(double days)
        {
            if (end + width > rows.Length)
            {
                var larger = ArrayPool<double>.Shared.Rent(2 * rows.Length);
                rows.CopyTo(larger, 0);
                ArrayPool<double>.Shared.Return(rows);
                rows = larger;
            }

            var row = end;
            while (row > 0 && rows[row - width] > days)
            {
                row -= width;
            }

            Array.Copy(rows, row, rows, row + width, end - row);
            end += width;
            rows[row] = days;
            return rows.AsSpan(row + 1, lives.Length);
        }
    }
}
