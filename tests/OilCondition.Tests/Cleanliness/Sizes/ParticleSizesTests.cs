using CsCheck;
using OilCondition.Cleanliness;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Reference;

namespace OilCondition.Tests.Cleanliness;

public class ParticleSizesTests
{
    [Fact]
    public void Every_pair_of_the_table_is_given_both_ways()
    {
        // ISO 11171 annex or ISO/TR 16386, one secondary reproduction: acftd_size.csv.
        var rows = ReferenceFolder.Rows("acftd_size.csv");
        rows.Count.ShouldBe(16);
        foreach (var row in rows)
        {
            var (acftd, c) = (Read(row["acftd_um"]), Read(row["iso11171_um_c"]));
            ParticleSizes.AcftdToMicrometresC(acftd).ShouldBe(c);
            ParticleSizes.MicrometresCToAcftd(c).ShouldBe(acftd);
        }
    }

    [Fact]
    public void Recalled_pairs_of_the_same_relation_agree()
    {
        // ISO/TR 16386, µm(c) to µm ACFTD (from memory), no part of the table.
        (double C, double Acftd)[] recalled =
        [
            (5, 2.7),
            (7, 5.9),
            (8, 7.4),
            (10, 10.2),
            (15, 16.9),
            (20, 23.4),
            (25, 30.1),
            (30, 37.3),
        ];
        foreach (var (c, acftd) in recalled)
        {
            ParticleSizes.MicrometresCToAcftd(c).ShouldBe(acftd, 0.25);
        }
    }

    [Fact]
    public void A_size_goes_there_and_back_and_larger_stays_larger() =>
        Gen.Select(Gen.Double[1, 100], Gen.Double[1, 100])
            .Holds(
                (a, b) =>
                {
                    var c = ParticleSizes.AcftdToMicrometresC(a);
                    ParticleSizes.MicrometresCToAcftd(Math.Min(70, c)).ShouldBe(a, 1e-9);
                    Math.Sign(ParticleSizes.AcftdToMicrometresC(b) - c).ShouldBe(Math.Sign(b - a));
                    ParticleSizes
                        .MicrometresBToMicrometresC(ParticleSizes.MicrometresCToMicrometresB(a))
                        .ShouldBe(a, 1e-12 * a);
                }
            );

    [Fact]
    public void Micrometres_b_are_the_smaller_unit()
    {
        // 0.898, from memory: 10 µm(b) are 8.98 µm(c), so that a particle has more µm(b) than µm(c).
        ParticleSizes.MicrometresBToMicrometresC(10).ShouldBe(8.98, 1e-12);
        ParticleSizes.MicrometresCToMicrometresB(8.98).ShouldBe(10, 1e-12);
        ParticleSizes.MicrometresBSource.Kind.ShouldBe(SourceKind.FromMemory);
    }

    [Theory]
    [InlineData(0.99)]
    [InlineData(100.01)]
    [InlineData(double.NaN)]
    public void Outside_the_pairs_nothing_is_given(double acftd) =>
        Should
            .Throw<ArgumentOutOfRangeException>(() => ParticleSizes.AcftdToMicrometresC(acftd))
            .Message.ShouldContain("allowed: 1 to 100 µm (ACFTD)");

    [Fact]
    public void Four_micrometres_c_have_no_counterpart() =>
        Should
            .Throw<ArgumentOutOfRangeException>(() => ParticleSizes.MicrometresCToAcftd(4))
            .Message.ShouldContain("micrometresC is 4 µm(c); allowed: 4.2 to 70");

    private static double Read(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
