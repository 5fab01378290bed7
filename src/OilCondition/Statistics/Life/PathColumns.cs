#if NET
using System.Runtime.Intrinsics;
#endif

namespace OilCondition.Statistics;

/// <summary>Paths with a known start and one number of degrees of freedom, four side by side: the same formulas as in <see cref="PassagePath"/>.</summary>
internal sealed class PathColumns
{
    /// <summary>Numbers that a path has here.</summary>
    public const int Fields = 8;

    /// <summary>Beyond it Student's chance is 0 or 1 to the last digit, and the square is still a number.</summary>
    private const double Farthest = 1e10;

    private readonly PassageRule rule;
    private readonly double[] columns;
    private readonly int count;
    private readonly int shallow;

    /// <summary>Puts the paths that fit in columns: first those whose bridge is integrated by quadrature, then those that have it in closed form.</summary>
    public PathColumns(PassageRule rule, List<PassagePath> paths)
    {
        this.rule = rule;
        var (soft, hard) = (0, 0);
        foreach (var path in paths)
        {
            if (path.FitsColumns(rule))
            {
                soft += path.IsByQuadrature ? 1 : 0;
                hard += path.IsByQuadrature ? 0 : 1;
            }
        }

        shallow = Padded(soft);
        count = shallow + Padded(hard);
        columns = new double[Fields * count];

        // What fills up a column has no weight and harmless numbers.
        columns.AsSpan(count).Fill(1);
        (soft, hard) = (0, shallow);
        foreach (var path in paths)
        {
            if (path.FitsColumns(rule))
            {
                path.Store(columns, path.IsByQuadrature ? soft++ : hard++, count);
            }
        }
    }

    /// <summary>Sum of the weights times the chances of having crossed by a time above 0.</summary>
    public double Chance(double time)
    {
        var one = LaneMath.Of(1);
        var t = LaneMath.Of(time);
        Lanes sum = default;
        for (var i = 0; i < count; i += LaneMath.Width)
        {
            var spread = Root((Column(3, i) + Column(4, i) * t) * t);
            var over = rule.Student.Below(Limited((Column(2, i) * t - Column(1, i)) / spread), out var cosine2);
            var back =
                i < shallow
                    ? Returned(cosine2, Column(5, i))
                    : Column(6, i)
                        * rule.Student.Below(
                            Limited(LaneMath.Of(0) - (Column(1, i) + Column(7, i) * t) / (Column(5, i) * spread)),
                            out _
                        );
            sum += Column(0, i) * LaneMath.Min(one, over + back);
        }

        return LaneMath.Sum(sum);
    }

    private static int Padded(int count) => (count + LaneMath.Width - 1) / LaneMath.Width * LaneMath.Width;

    private static Lanes Limited(Lanes y) =>
        LaneMath.Max(LaneMath.Of(-Farthest), LaneMath.Min(LaneMath.Of(Farthest), y));

    private static Lanes Root(Lanes x) =>
#if NET
        Vector256.Sqrt(x);
#else
        new(Math.Sqrt(x.A), Math.Sqrt(x.B), Math.Sqrt(x.C), Math.Sqrt(x.D));
#endif

    /// <summary>As in the rule for one path, with the peak 1/cos².</summary>
    private Lanes Returned(Lanes cosine2, Lanes a)
    {
        var one = LaneMath.Of(1);
        var scaled = a * cosine2;
        Lanes sum = default;
        for (var i = 0; i < rule.Powers.Length; i++)
        {
            sum += LaneMath.Of(rule.Weights[i]) / Root(one - scaled * LaneMath.Of(rule.Powers[i]));
        }

        var power = LaneMath.Of(rule.Factor);
        var square = Root(cosine2);
        for (var left = rule.DegreesOfFreedom; left > 0; left >>= 1)
        {
            power = (left & 1) == 1 ? power * square : power;
            square *= square;
        }

        return power * sum;
    }

    private Lanes Column(int field, int i) => LaneMath.Load(columns, field * count + i);
}
