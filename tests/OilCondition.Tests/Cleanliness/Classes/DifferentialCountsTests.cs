using CsCheck;
using OilCondition.Cleanliness;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Reference;

namespace OilCondition.Tests.Cleanliness;

public class DifferentialCountsTests
{
    private static readonly string[] Ranges = ["5-15", "15-25", "25-50", "50-100", ">100"];

    [Fact]
    public void Every_limit_of_NAS_1638_belongs_to_its_class_and_the_next_count_above_to_a_later_one()
    {
        // NAS 1638 class table, as reproduced in nas1638.csv.
        var rows = ReferenceFolder.Rows("nas1638.csv");
        rows.Count.ShouldBe(14);
        for (var range = 0; range < 5; range++)
        {
            var limits = rows.Select(row => (Class: row["class"], Limit: int.Parse(row[Ranges[range]]))).ToArray();
            string Expected(double count) =>
                limits.Where(row => count <= row.Limit).Select(row => row.Class).FirstOrDefault(">12");
            foreach (var (written, limit) in limits)
            {
                DifferentialCounts
                    .UpperLimitPer100Millilitres(As4059Size.B + range, CleanlinessClass.Parse(written))
                    .ShouldBe(limit);
                double[] around = [limit, double.BitIncrement(limit), Math.Max(0, double.BitDecrement(limit))];
                foreach (var count in around)
                {
                    var result = In(range, count);
                    result.Classes[range].ToString().ShouldBe(Expected(count), $"{count:R} in {Ranges[range]}");
                    result.Class.ToString().ShouldBe(Expected(count));
                }
            }
        }
    }

    [Fact]
    public void AS4059_table_1_has_the_limits_of_NAS_1638()
    {
        // SAE AS4059 rev. E table 1, as reproduced in as4059.csv, rows in the order of the ranges.
        var rows = ReferenceFolder.Rows("as4059.csv").Where(row => row["table"] == "differential").ToArray();
        rows.Length.ShouldBe(14 * 5);
        foreach (var group in rows.GroupBy(row => row["class"]))
        {
            var limits = group.Select(row => double.Parse(row["max_per_100mL"])).ToArray();
            var result = Counts(limits);
            result.Classes[0].ToString().ShouldBe(group.Key);
            result.Class.ToString().ShouldBe(group.Key);
            var over = new DifferentialCounts(limits[0] + 1, limits[1], limits[2], limits[3], limits[4]);
            over.Class.Rank.ShouldBe(CleanlinessClass.Parse(group.Key).Rank + 1);
            over.DecidingSize.ShouldBe(As4059Size.B);
        }
    }

    /// <summary>Second route to both tables: the running sums of table 1 from the coarse end are table 2, sizes F to B.</summary>
    [Fact]
    public void The_running_sums_of_the_differential_limits_are_the_cumulative_limits()
    {
        foreach (
            var cleanlinessClass in Enumerable
                .Range(0, 13)
                .Select(CleanlinessClass.Of)
                .Prepend(CleanlinessClass.Class00)
        )
        {
            var sum = 0;
            for (var size = As4059Size.F; size >= As4059Size.B; size--)
            {
                sum += DifferentialCounts.UpperLimitPer100Millilitres(size, cleanlinessClass);
                As4059
                    .Exact.UpperLimitPer100Millilitres(size, cleanlinessClass)
                    .ShouldBe(sum, $"{cleanlinessClass}{size}");
            }
        }
    }

    [Fact]
    public void The_worst_range_decides_and_is_named()
    {
        var result = new DifferentialCounts(1500, 300, 70, 5, 1); // table by eye: 3, 3, 4, 2, 1

        string.Join(" ", result.Classes).ShouldBe("3 3 4 2 1");
        result.Class.ToString().ShouldBe("4");
        result.DecidingSize.ShouldBe(As4059Size.D);
        new DifferentialCounts(0, 0, 0, 0, 1025).Class.ToString().ShouldBe(">12");
        new DifferentialCounts(0, 0, 0, 0, 0).Class.ToString().ShouldBe("00");
    }

    [Fact]
    public void More_particles_never_give_a_cleaner_class() =>
        Gen.Select(Gen.Double[0, 2e6].Array[5], Gen.Double[0, 1e5].Array[5])
            .Holds(
                (counts, more) =>
                {
                    double[] both = [.. counts.Zip(more, (a, b) => a + b)];
                    Counts(both).Class.Rank.ShouldBeGreaterThanOrEqualTo(Counts(counts).Class.Rank);
                }
            );

    [Fact]
    public void Differences_of_cumulative_counts_are_the_counts_in_the_ranges()
    {
        var cumulative = new Dictionary<As4059Size, double>
        {
            [As4059Size.A] = 90000,
            [As4059Size.B] = 19462,
            [As4059Size.C] = 3462,
            [As4059Size.D] = 612,
            [As4059Size.E] = 106,
            [As4059Size.F] = 16,
        };

        // Limits of class 6, table 2; their differences are those of NAS 1638.
        var counts = DifferentialCounts.FromCumulative(cumulative);
        counts.ShouldBe(new DifferentialCounts(16000, 2850, 506, 90, 16));
        counts.GetHashCode().ShouldBe(new DifferentialCounts(16000, 2850, 506, 90, 16).GetHashCode());
        counts.ShouldNotBe(new DifferentialCounts(16000, 2850, 506, 90, 17));
        cumulative[As4059Size.E] = 613;
        Should.Throw<ArgumentException>(() => DifferentialCounts.FromCumulative(cumulative)).Message.ShouldContain("E");
        cumulative.Remove(As4059Size.C);
        Should
            .Throw<ArgumentException>(() => DifferentialCounts.FromCumulative(cumulative))
            .Message.ShouldContain("no size C");
    }

    [Fact]
    public void Every_limit_of_the_Navy_table_belongs_to_its_class()
    {
        // US Navy aviation training manuals, as reproduced in navy_hydraulic_class.csv.
        string[] columns = ["5-10", "10-25", "25-50", "50-100", ">100"];
        var rows = ReferenceFolder.Rows("navy_hydraulic_class.csv");
        rows.Count.ShouldBe(7);
        foreach (var row in rows)
        {
            for (var range = 0; range < 5; range++)
            {
                var counts = new double[5];
                counts[range] = int.Parse(row[columns[range]]);
                Navy(counts).ToString().ShouldBe(row["class"]);
                counts[range] = double.BitIncrement(counts[range]);
                Navy(counts).ToString().ShouldBe(row["class"] == "6" ? ">6" : $"{int.Parse(row["class"]) + 1}");
            }
        }

        Should
            .Throw<ArgumentOutOfRangeException>(() => Navy([0, 0, double.NaN, 0, 0]))
            .Message.ShouldContain("from25To50");
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        for (var range = 0; range < 5; range++)
        {
            Should.Throw<ArgumentOutOfRangeException>(() => In(range, -1));
            Should.Throw<ArgumentOutOfRangeException>(() => In(range, double.PositiveInfinity));
        }

        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                DifferentialCounts.UpperLimitPer100Millilitres(As4059Size.B, CleanlinessClass.Class000)
            )
            .Message.ShouldContain("is 000; allowed: 00 to 12");
        Should.Throw<ArgumentOutOfRangeException>(() =>
            DifferentialCounts.UpperLimitPer100Millilitres(As4059Size.A, CleanlinessClass.Of(1))
        );
    }

    private static DifferentialCounts In(int range, double count)
    {
        var counts = new double[5];
        counts[range] = count;
        return Counts(counts);
    }

    private static DifferentialCounts Counts(double[] counts) =>
        new(counts[0], counts[1], counts[2], counts[3], counts[4]);

    private static CleanlinessClass Navy(double[] counts) =>
        CleanlinessClass.OfUsNavy(counts[0], counts[1], counts[2], counts[3], counts[4]);
}
