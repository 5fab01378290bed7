using CsCheck;
using MathNet.Numerics.Interpolation;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Statistics;

/// <summary>The curve of a law between its points against MathNet's, and what makes it fit for chances.</summary>
public class MonotoneCubicTests
{
    private static readonly float[] X = [0, 0.7f, 1.1f, 2.5f, 2.6f, 4, 5.5f];
    private static readonly float[] Y = [0, 0.02f, 0.3f, 0.35f, 0.6f, 0.6f, 0.95f];

    private static double[] Doubles(float[] values) => Array.ConvertAll(values, value => (double)value);

    [Fact]
    public void Between_inner_points_it_is_the_curve_of_a_general_library()
    {
        // MathNet.Numerics has the same slopes at inner points, and other ones at both ends.
        var theirs = CubicSpline.InterpolatePchipSorted(Doubles(X), Doubles(Y));
        for (var after = 2; after < X.Length - 1; after++)
        {
            var piece = new MonotoneCubic(X, Y, after);
            foreach (var part in new[] { 0, 0.1, 0.35, 0.5, 0.8, 1 })
            {
                var at = X[after - 1] + part * ((double)X[after] - X[after - 1]);
                piece.At(part).ShouldBe(theirs.Interpolate(at), 1e-12, $"at {at}");
            }
        }
    }

    [Fact]
    public void It_goes_on_smoothly_from_piece_to_piece()
    {
        const double step = 1e-6;
        for (var at = 1; at < X.Length - 1; at++)
        {
            var (before, after) = ((double)X[at] - X[at - 1], (double)X[at + 1] - X[at]);
            var arriving = (Y[at] - new MonotoneCubic(X, Y, at).At(1 - step)) / (step * before);
            var leaving = (new MonotoneCubic(X, Y, at + 1).At(step) - Y[at]) / (step * after);
            arriving.ShouldBe(leaving, 1e-5, $"at {X[at]}");
        }
    }

    [Fact]
    public void The_bend_is_how_far_the_middle_lies_off_the_straight_line()
    {
        for (var after = 1; after < X.Length; after++)
        {
            var piece = new MonotoneCubic(X, Y, after);
            piece.Bend.ShouldBe(piece.At(0.5) - ((double)Y[after - 1] + Y[after]) / 2, 1e-15);
        }

        new MonotoneCubic([0, 1, 2], [0, 0.5f, 0.5f], 1).Bend.ShouldBe(0.0625, 1e-15); // by hand: slopes 1/2 and 0
    }

    [Fact]
    public void Whatever_the_points_it_never_falls_and_its_parts_are_found_again() =>
        Gen.Select(Gen.Double[1e-4, 3].Array[3, 8], Gen.Double[0, 0.3].Array[8], Gen.Double[0, 1])
            .Holds(
                (gaps, rises, share) =>
                {
                    var (x, y) = (new float[gaps.Length], new float[gaps.Length]);
                    for (var i = 1; i < gaps.Length; i++)
                    {
                        x[i] = x[i - 1] + (float)gaps[i];

                        // Every third one is level.
                        y[i] = y[i - 1] + (i % 3 == 2 ? 0 : (float)rises[i]);
                    }

                    for (var after = 1; after < x.Length; after++)
                    {
                        var piece = new MonotoneCubic(x, y, after);
                        double before = y[after - 1];
                        for (var part = 0.0; part <= 1; part += 1 / 64.0)
                        {
                            piece.At(part).ShouldBeGreaterThanOrEqualTo(before - 1e-15);
                            before = piece.At(part);
                        }

                        before.ShouldBe(y[after], 1e-15);
                        var value = y[after - 1] + share * ((double)y[after] - y[after - 1]);
                        if (y[after] > y[after - 1])
                        {
                            var found = piece.PartOf(value);
                            found.ShouldBeInRange(0, 1);
                            piece.At(found).ShouldBe(value, 1e-14);
                        }
                    }
                },
                iter: 300
            );
}
