using System.Globalization;
using OilCondition.Limits;

namespace OilCondition.Benchmarks.Quality;

/// <summary>The starting limits of turbines on machines of which nothing is wrong, and on one that ages slowly.</summary>
public static class StarterRows
{
    private static readonly LimitSet Limits = LimitSet.Starter(StarterEquipment.Turbine);

    public static IEnumerable<ScoreRow> Of(int runs) =>
        [
            Healthy(Math.Max(1, 300 * runs / 1000)),
            Warning("acid number", Measurands.AcidNumber, 0.1, 0.09, 0.012, 2, 0.38, "≥ 365 days (was 406)", runs),
            Warning(
                "membrane patch colour",
                Measurands.MembranePatchColour,
                10,
                6.3,
                1.5,
                1,
                40,
                "≥ 552 days (was 613)",
                runs
            ),
        ];

    private static ScoreRow Healthy(int machines)
    {
        const int Months = 36;
        var random = new Random(700);
        var alerts = new Dictionary<(FindingCode Code, string Measurand), int>();
        for (var machine = 0; machine < machines; machine++)
        {
            var history = HealthyMachines.Healthy(random, Months);
            HashSet<string> before = [];
            for (var month = 0; month < Months; month++)
            {
                var found = MonthlyRecords.Assess(history, Limits, month).Alerts;
                foreach (var alert in found.Where(alert => !before.Contains(alert.Key)))
                {
                    var kind = (alert.Findings[0].Code, alert.Findings[0].Measurand.Id);
                    alerts[kind] = alerts.GetValueOrDefault(kind) + 1;
                }

                before = [.. found.Select(alert => alert.Key)];
            }
        }

        var years = machines * Months / 12.0;
        var worst = alerts
            .OrderByDescending(one => one.Value)
            .ThenBy(one => one.Key.Measurand, StringComparer.Ordinal)
            .Take(4)
            .Select(one => Text($"{one.Key.Code} {one.Key.Measurand} {one.Value / years:F3}"));
        return new ScoreRow(
            "healthy turbines with the starting limits, 3 years, sampled monthly",
            Text(
                $"false alerts a machine-year {alerts.Values.Sum() / years:F3}, among them {string.Join(", ", worst)}"
            ),
            "≤ 0.05 (was 0.447, of which 0.35 iron out of the usual)",
            machines
        );
    }

    private static ScoreRow Warning(
        string name,
        Measurand measurand,
        double from,
        double perYear,
        double scatter,
        int decimals,
        double alarm,
        string mustBe,
        int runs
    )
    {
        var random = new Random(710);
        var crossing = 12 * (alarm - from) / perYear;
        var days = new List<double>();
        for (var run = 0; run < runs; run++)
        {
            var months = (int)crossing + 1;
            var history = HealthyMachines.Ageing(random, measurand, from, perYear, scatter, decimals, months);
            var first = Enumerable
                .Range(0, months)
                .FirstOrDefault(month => MonthlyRecords.Assess(history, Limits, month).Alerts.Count > 0, months);
            days.Add(Math.Max(0, MonthlyRecords.MonthDays * (crossing - first)));
        }

        days.Sort();
        return new ScoreRow(
            Text($"{name} rises from {from} by {perYear} a year, scatter {scatter}, alarm at {alarm}"),
            Text($"first alert {days[days.Count / 2]:F0} days before the alarm figure is crossed, the median"),
            mustBe,
            runs
        );
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
