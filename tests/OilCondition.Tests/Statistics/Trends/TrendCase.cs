using System.Globalization;
using System.Text.RegularExpressions;
using OilCondition.ControlCharts;
using OilCondition.Statistics;
using OilCondition.Tests.Reference;

namespace OilCondition.Tests.Statistics;

/// <summary>A row of trend.csv with its data set and the figures in its quantity's name.</summary>
internal sealed class TrendCase(ReferenceCase row, Match match)
{
    public ReferenceCase Row => row;

    public double A => Figure("a");

    public double B => Figure("b");

    public double C => Figure("c");

    public double[] X => Data("x");

    public double[] Y => Data("y");

    public MannKendall Kendall => MannKendall.Test(X, Y, default, 0, MannKendallMethod.Normal);

    public StraightLine Straight => StraightLine.Fit(X, Y);

    public double[] Residuals
    {
        get
        {
            var residuals = new double[Y.Length];
            Straight.Residuals(X, Y, residuals);
            return residuals;
        }
    }

    public IReadOnlyList<CusumPoint> Cusum => new CusumChart(Number("target"), Number("k"), Number("h")).Plot(Y);

    public GeneralisedEsdResult Esd => GeneralisedEsd.Find(Y, (int)Number("r"), Number("alpha"));

    /// <summary>An input of the row, or of another row of its data set where the row does not repeat it.</summary>
    public double Number(string argument)
    {
        var stated = row.Arguments.ContainsKey(argument)
            ? row
            : ReferenceFolder
                .Cases(row.File)
                .First(other => Prefix(other) == Prefix(row) && other.Arguments.ContainsKey(argument));
        return stated.Number(argument);
    }

    public TheilSen Line(double confidence, TheilSenRankRule rule) => TheilSen.Fit(X, Y, default, confidence, rule);

    public Interval Band(BandKind of) => Straight.BandAt(Number("x0"), of, A / 100);

    public EwmaChart Ewma(EwmaLimits limits) =>
        new(Number("target"), Number("sigma"), Number("lambda"), Number("L"), limits);

    public double Crossing(double chance)
    {
        TryCrossing(chance, out var position).ShouldBeTrue(row.Id);
        return position;
    }

    /// <summary>A falling line is mirrored: its crossing downwards is that of the mirrored line upwards.</summary>
    public bool TryCrossing(double chance, out double position)
    {
        var of = row.Inputs.Contains("new reading", StringComparison.Ordinal) ? BandKind.NewReading : BandKind.Mean;
        var sign = Straight.Slope < 0 ? -1 : 1;
        return StraightLine
            .Fit(X, [.. Y.Select(y => sign * y)])
            .TryCrossing(sign * Number("y0"), chance, of, out position);
    }

    public double CrossingError(BandKind of) => Straight.StandardErrorAt(Crossing(0.5), of) / Math.Abs(Straight.Slope);

    /// <summary>By d = 2 (1 − r) − (e_1² + e_n²)/Σe², an identity of the lag-1 correlation r about 0.</summary>
    public double DurbinWatson()
    {
        var e = Residuals;
        var ends = (e[0] * e[0] + e[^1] * e[^1]) / e.Sum(one => one * one);
        return 2 * (1 - SerialCorrelation.LagOne(e)) - ends;
    }

    public double Deviation(NaturalScale scale = NaturalScale.Linear)
    {
        var values = Scales.Transformed(Y, scale, "y");
        return Math.Sqrt(Numbers.SumOfSquaresAbout(values, Numbers.Mean(values)) / (values.Length - 1));
    }

    public double MeanOf(NaturalScale scale = NaturalScale.Linear) => Numbers.Mean(Scales.Transformed(Y, scale, "y"));

    public static double[] Column(IReadOnlyList<IReadOnlyDictionary<string, string>> rows, string column) =>
        [.. rows.Select(r => double.Parse(r[column], CultureInfo.InvariantCulture))];

    private static string Prefix(ReferenceCase other) => other.Id.Split('.')[0];

    private double Figure(string name) => double.Parse(match.Groups[name].Value, CultureInfo.InvariantCulture);

    private double[] Data(string column) =>
        Column(
            [.. ReferenceFolder.Rows("trend-data.csv").Where(r => r["dataset"] == row.Arguments["dataset"])],
            column
        );
}
