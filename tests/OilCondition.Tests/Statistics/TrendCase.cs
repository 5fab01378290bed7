using System.Globalization;
using System.Text.RegularExpressions;
using OilCondition.Statistics;
using OilCondition.Tests.Reference;

namespace OilCondition.Tests.Statistics;

/// <summary>A row of trend.csv with its data set and the figures in its quantity's name.</summary>
public sealed class TrendCase(ReferenceCase row, Match match)
{
    public ReferenceCase Row => row;

    public double A => Figure("a");

    public double B => Figure("b");

    public double C => Figure("c");

    public double[] X => Data("x");

    public double[] Y => Data("y");

    public MannKendallResult Kendall => MannKendall.Test(X, Y, default, 0, MannKendallMethod.Normal);

    public StraightLineFit Straight => StraightLine.Fit(X, Y);

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

    public TheilSenFit Line(double confidence, TheilSenRankRule rule) => TheilSen.Fit(X, Y, default, confidence, rule);

    public ProfileInterval Band(CrossingOf of) => Straight.BandAt(Number("x0"), of, A / 100);

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
        var of = row.Inputs.Contains("new reading", StringComparison.Ordinal)
            ? CrossingOf.NewReading
            : CrossingOf.MeanLine;
        var sign = Straight.Slope < 0 ? -1 : 1;
        return StraightLine
            .Fit(X, [.. Y.Select(y => sign * y)])
            .TryCrossing(sign * Number("y0"), chance, of, out position);
    }

    public double CrossingError(CrossingOf of) =>
        Straight.StandardErrorAt(Crossing(0.5), of) / Math.Abs(Straight.Slope);

    public double ModifiedZ(double value)
    {
        var scores = new double[Y.Length];
        ModifiedZScore.TryScores(Y, scores).ShouldBeTrue();
        return scores[Array.FindIndex(Y, y => Math.Abs(y - value) < 1e-9)];
    }

    public double[] Smoothed()
    {
        var smoothed = new double[Y.Length];
        var share = row.Arguments["f"]
            .Split('/')
            .Select(part => double.Parse(part, CultureInfo.InvariantCulture))
            .ToArray();
        Lowess.Smooth(X, Y, smoothed, share.Length > 1 ? share[0] / share[1] : share[0], passes: 3);
        return smoothed;
    }

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
