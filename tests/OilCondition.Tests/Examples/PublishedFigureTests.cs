using System.Globalization;
using OilCondition.Cleanup;
using OilCondition.Statistics;
using OilCondition.Tests.Architecture;
using OilCondition.Tests.Cleanliness;
using OilCondition.Tests.Cleanup;
using OilCondition.Tests.Prognosis;
using OilCondition.Tests.Reference;
using OilCondition.Tests.Statistics;
using OilCondition.Tests.Thermal;
using OilCondition.Tests.Viscosity;
using OilCondition.Tests.Water;

namespace OilCondition.Tests.Examples;

/// <summary>
/// Under 'Published figures' a page has what others print, from the reference files by its row, and what the library makes of it; or it says that nothing was found.
/// </summary>
public class PublishedFigureTests
{
    private const string Heading = "\n## Published figures\n";

    /// <summary>Digits of ours that a page shows at least, where the published figure has as many.</summary>
    private const int FewestDigits = 5;

    /// <summary>
    /// The first words of a table say where its rows are: what is published of a row, and what the library makes of it. None where that takes minutes: the test that
    /// works it out compares it with the page.
    /// </summary>
    private static readonly Dictionary<string, (Func<string, string> Published, Func<string, object>? Ours)> Tables =
        new(StringComparer.Ordinal)
        {
            ["row of `tests/Reference/cleanliness.csv`"] = Of("cleanliness.csv", CleanlinessReferenceTests.Answer),
            ["row of `tests/Reference/heat.csv`"] = Of("heat.csv", row => HeatReferenceTests.Answer(row)),
            ["row of `tests/Reference/life.csv`"] = Of("life.csv", LifeReferenceTests.Answer),
            ["row of `tests/Reference/steam.csv`"] = Of("steam.csv", row => SteamReferenceTests.Answer(row)),
            ["row of `tests/Reference/trend.csv`"] = Of("trend.csv", row => TrendReferenceTests.Answer(row)),
            ["row of `tests/Reference/viscosity.csv`"] = Of(
                "viscosity.csv",
                row => ViscosityReferenceTests.Answer(row)
            ),
            ["row of `tests/Reference/water.csv`"] = Of("water.csv", row => WaterReferenceTests.Answer(row)),
            ["row of `tests/Reference/worked-examples.csv`"] = Of(
                "worked-examples.csv",
                row => WorkedExampleTests.Answer(row)
            ),
            ["set of `tests/Reference/nist`"] = (Certified, name => Fitted(name)),
            ["set of `tests/Reference/nist`, as a cleanup"] = (Certified, name => FittedAsCleanup(name)),
            ["instance of `tests/Reference/weighted-tardiness.csv`"] = (
                name => Instance(name)[1],
                null // WeightedTardinessTests
            ),
        };

    [Theory]
    [MemberData(nameof(RoomPageTests.Rooms), MemberType = typeof(RoomPageTests))]
    public void A_page_shows_published_figures_and_ours_beside_them_or_says_that_there_are_none(string page)
    {
        var lines = RepositoryFiles.Read("docs", page).Split(Heading)[1].Split("\n## ")[0].Split('\n');
        var rows = lines
            .Where(line => line.StartsWith("| ", StringComparison.Ordinal))
            .Select(line => line.Split('|', StringSplitOptions.TrimEntries))
            .ToList();
        if (rows.Count == 0)
        {
            lines.ShouldContain(line => line.StartsWith("No published ", StringComparison.Ordinal), page);
        }

        var table = "";
        foreach (var cells in rows)
        {
            if (Tables.ContainsKey(cells[1]))
            {
                table = cells[1];
                continue;
            }

            var (published, ours) = Tables[table];
            var where = $"{page}, {cells[1]}";
            ShouldBeAsPublished(cells[3], published(cells[1]), where);
            if (ours is not null)
            {
                ShouldBeOurs(cells[4], ours(cells[1]), Digits(cells[3]), where);
            }
        }
    }

    private static void ShouldBeAsPublished(string shown, string published, string where)
    {
        if (TryRead(shown, out var figure) && TryRead(published, out var source))
        {
            figure.ShouldBe(source, $"{where}, published");
        }
        else
        {
            shown.ShouldBe(published, $"{where}, published");
        }
    }

    /// <summary>A figure agrees to the last digit that is shown, and is shown to no fewer digits than would tell it from the published one.</summary>
    private static void ShouldBeOurs(string shown, object ours, int publishedDigits, string where)
    {
        if (ours is string word)
        {
            shown.ShouldBe(word, $"{where}, here");
            return;
        }

        var figure = Convert.ToDouble(ours, CultureInfo.InvariantCulture);
        TryRead(shown, out var stated).ShouldBeTrue($"{where}, here: {shown}");
        var decimals = shown.Contains('.', StringComparison.Ordinal) ? shown.Length - shown.IndexOf('.') - 1 : 0;
        Math.Abs(figure - stated)
            .ShouldBeLessThanOrEqualTo(0.5001 * Math.Pow(10, -decimals), $"{where}, here {shown}, is {figure:R}");
        Digits(shown).ShouldBeGreaterThanOrEqualTo(Math.Min(publishedDigits, FewestDigits), $"{where}, digits");
    }

    private static int Digits(string figure) =>
        figure.Replace(".", "", StringComparison.Ordinal).TrimStart('-', '0').Count(char.IsAsciiDigit);

    private static bool TryRead(string text, out double figure) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out figure);

    private static (Func<string, string>, Func<string, object>?) Of(string file, Func<ReferenceCase, object> answer) =>
        (id => ReferenceFolder.Case(file, id).Value, id => answer(ReferenceFolder.Case(file, id)));

    /// <summary>Names such as <c>Misra1a b1</c>.</summary>
    private static string Certified(string name) =>
        NistExponentialTests
            .Certified(name.Split(' ')[0], name.Split(' ')[1])
            .ToString("R", CultureInfo.InvariantCulture);

    private static double Fitted(string name)
    {
        var fit = NistExponentialTests.Fit($"nist/{name.Split(' ')[0]}.csv");
        return name.EndsWith("b1", StringComparison.Ordinal) ? fit.Floor : fit.Rate;
    }

    private static double FittedAsCleanup(string name)
    {
        var (x, y) = NistExponentialTests.Data($"nist/{name.Split(' ')[0]}.csv");
        var options = new CleanupOptions(DecayNoise.Constant, startedAt: Runs.At(0), start: 0);
        var curve = CleanupCurve.Fit(Runs.Moments(x), y, options);
        return name.EndsWith("b1", StringComparison.Ordinal) ? curve.Floor : curve.RatePerHour;
    }

    private static string[] Instance(string name) =>
        File.ReadLines(ReferenceFolder.PathOf("weighted-tardiness.csv"))
            .Select(line => line.Split(','))
            .Single(fields => fields[0] == name);
}
