namespace OilCondition.Statistics;

/// <summary>Four paths in a stretch of memory: their figures, and what is worked out of them at one time, a column of four each.</summary>
internal static class PathBlock
{
    /// <summary>Beyond it the square of a distance may overflow; no chance is left there that a digit could show.</summary>
    private const double Farthest = 1e150;

    /// <summary>Doubles of a block.</summary>
    public const int Size = ((int)Column.Chance + 1) * LaneMath.Width;

    /// <summary>What stands in a column.</summary>
    public enum Column
    {
        /// <summary>Two figures of the course: see <see cref="FourCourses.Figures"/>.</summary>
        First,
        Second,
        Weight,
        Distance,
        Drift,
        V0,
        C1,
        C2,
        C3,
        FreeWalk,

        /// <summary>What of a return does not depend on time: see <see cref="PassageRule.Barrier"/>.</summary>
        Turn,
        Bridge,
        Factor,

        /// <summary>At one time: the course's clock since the last reading, the distance that is left, its variance, the chance of being beyond.</summary>
        Clock,
        Gap,
        Variance,
        Chance,
    }

    public static Lanes Load(ReadOnlySpan<double> block, Column column) =>
        LaneMath.Load(block, (int)column * LaneMath.Width);

    public static void Store(Lanes four, Span<double> block, Column column) =>
        LaneMath.Store(four, block, (int)column * LaneMath.Width);

    /// <summary>Lays down the figures of a path; those of the first fill the block up, but for its weight.</summary>
    public static void Set(Span<double> block, int lane, in PassagePath path)
    {
        var (first, second) = FourCourses.Figures(path.Course);
        Set(block, Column.First, lane, first);
        Set(block, Column.Second, lane, second);
        Set(block, Column.Distance, lane, Math.Max(-Farthest, Math.Min(Farthest, path.Distance)));
        Set(block, Column.Drift, lane, path.Drift);
        Set(block, Column.V0, lane, path.V0);
        Set(block, Column.C1, lane, path.C1);
        Set(block, Column.C2, lane, path.C2);
        Set(block, Column.C3, lane, path.C3);
        Set(block, Column.FreeWalk, lane, path.FreeWalk);
        if (lane == 0)
        {
            Store(default, block, Column.Weight);
        }

        block[(int)Column.Weight * LaneMath.Width + lane] = path.Weight;
    }

    /// <summary>Works out the chances of being beyond from gaps and variances, block by block.</summary>
    public static void FindChances(Span<double> blocks, StudentSeries student)
    {
        if (student.IsShort)
        {
            // A loop without a call keeps its figures in the registers of the processor.
            for (var rest = blocks; rest.Length > 0; rest = rest[Size..])
            {
                var block = rest[..Size];
                Store(
                    student.BeyondOfShort(Load(block, Column.Gap), Load(block, Column.Variance)),
                    block,
                    Column.Chance
                );
            }

            return;
        }

        for (var rest = blocks; rest.Length > 0; rest = rest[Size..])
        {
            var block = rest[..Size];
            Store(student.Beyond(Load(block, Column.Gap), Load(block, Column.Variance)), block, Column.Chance);
        }
    }

    /// <summary>The weighted sum of the chances.</summary>
    public static double Sum(ReadOnlySpan<double> blocks)
    {
        Lanes sum = default;
        for (var rest = blocks; rest.Length > 0; rest = rest[Size..])
        {
            var block = rest[..Size];
            sum = LaneMath.MultiplyAdd(Load(block, Column.Weight), Load(block, Column.Chance), sum);
        }

        return LaneMath.Sum(sum);
    }

    private static void Set(Span<double> block, Column column, int lane, double value)
    {
        if (lane == 0)
        {
            Store(LaneMath.Of(value), block, column);
        }
        else
        {
            block[(int)column * LaneMath.Width + lane] = value;
        }
    }
}
