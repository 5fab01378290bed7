using System.Text;
using OilCondition.Text;

namespace OilCondition.Cleanup;

/// <summary>A diagnosis as sentences.</summary>
internal static class StallWords
{
    public static string Text(StallDiagnosis diagnosis)
    {
        var text = new StringBuilder(Of(diagnosis.Verdict));
        text.Append(" (").Append(Of(diagnosis.Evidence)).Append(")\n");
        if (diagnosis.Alternatives.Count > 0)
        {
            text.Append("  ").Append(NotTold(diagnosis)).Append('\n');
        }

        foreach (var cause in diagnosis.Causes)
        {
            text.Append("  ")
                .Append(cause)
                .Append("\n    check: ")
                .Append(string.Join("; ", cause.Checks))
                .Append('\n');
        }

        if (diagnosis.Checks.Count > 0)
        {
            text.Append("  check as well: ").Append(string.Join("; ", diagnosis.Checks)).Append('\n');
        }

        return text.Append("Caution: ")
            .Append(string.Join(", ", diagnosis.Cautions.Select(one => PlainText.Spaced(one))))
            .Append(". The makers' instructions, local codes and licensed practice come first.\n")
            .ToString();
    }

    /// <summary>Which causes fit alike, and what would tell.</summary>
    public static string NotTold(StallDiagnosis diagnosis) =>
        $"The cause cannot be told from these readings: {Listed([.. diagnosis.Alternatives.Select(Of)])} would look alike. "
        + $"What would tell: {string.Join("; ", diagnosis.ToTellApart)}.";

    public static string Of(StallVerdict verdict) =>
        verdict switch
        {
            StallVerdict.SensorAtSaturation =>
                "The sensor stands at saturation: how much free water is left it cannot see.",
            StallVerdict.Done => "Done: the readings show the target.",
            StallVerdict.NotStalled => "Not stalled: it falls as planned to a target within reach.",
            StallVerdict.Slow => "Slow: the target is within reach, but it falls slower than planned.",
            StallVerdict.Stalled => "Stalled: it levels off above the target.",
            _ => "Not determined: the readings do not tell yet.",
        };

    public static string Of(StallCauseKind kind) =>
        kind switch
        {
            StallCauseKind.VacuumOrSweepAir => "as low as vacuum and sweep air of the plan go",
            StallCauseKind.OilTooCold => "oil too cold",
            StallCauseKind.WaterIngress => "water comes in",
            StallCauseKind.PoorVacuum => "too little vacuum",
            StallCauseKind.SweepAirMissing => "no sweep air",
            StallCauseKind.VacuumGaugeWrong => "a vacuum gauge that reads wrong",
            StallCauseKind.ThermometerWrong => "a thermometer that reads wrong",
            _ => "bypass, short circuit or too little flow",
        };

    public static string Of(StallCheck check) =>
        check switch
        {
            StallCheck.ChamberPressure =>
                "absolute pressure in the chamber by a second gauge, leaks, vacuum pump, condenser",
            StallCheck.SweepAir => "flow and dryness of the sweep air",
            StallCheck.OilTemperature => "oil temperature in chamber and tank by a second thermometer",
            StallCheck.Heater => "heater stages and thermostat",
            StallCheck.WaterSources => "cooler, shaft seals, breather",
            StallCheck.StandingWater => "water at the bottom of the tank",
            StallCheck.BypassValves => "bypass and relief valves",
            StallCheck.SuctionAndReturn => "suction and return at opposite ends",
            StallCheck.OilFlow => "oil flow as measured",
            StallCheck.TitrationBesideSensor => "a titration beside the sensor",
            StallCheck.Condensate => "condensate collected in an hour",
            _ => "take more readings",
        };

    private static string Listed(IReadOnlyList<string> words) =>
        words.Count < 2
            ? string.Concat(words)
            : $"{string.Join(", ", words.Take(words.Count - 1))} and {words[words.Count - 1]}";

    public static string Of(IReadOnlyList<EvidenceItem> evidence) => string.Join(", ", evidence);
}
