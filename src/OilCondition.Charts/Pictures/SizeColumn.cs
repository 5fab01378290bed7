using OilCondition.Cleanliness;

namespace OilCondition.Charts.Pictures;

/// <summary>What is known of one size, in particles per millilitre.</summary>
/// <param name="Low">Least count that it may be; null where nothing was counted.</param>
/// <param name="High">Largest count that it may be.</param>
/// <param name="IsCode">Whether only a scale number is known.</param>
/// <param name="Words">Count and scale number as they are written.</param>
/// <param name="Asked">Largest count that is asked for; null for none.</param>
/// <param name="AskedWords">The same as it is written.</param>
/// <param name="At">When it was counted; null where that is not known.</param>
/// <param name="IsBeyondScale">Whether there were more than the scale has numbers for, or too many to count.</param>
internal sealed record SizeColumn(
    double? Low,
    double? High,
    bool IsCode,
    string Words,
    double? Asked,
    string AskedWords,
    DateTimeOffset? At = null,
    bool IsBeyondScale = false
)
{
    /// <summary>The count of the latest sample of the oil charge, beside the strictest figure that is not to be passed.</summary>
    public static SizeColumn Of(ConditionAssessment assessment, Measurand size)
    {
        var state = assessment.States.FirstOrDefault(one => one.Measurand.Equals(size));
        var sample = assessment
            .History.Samples.Where(one =>
                one.TakenAt >= assessment.Charge.Since
                && one.TakenAt <= assessment.Options.AsOf
                && !assessment.History.IsSuspect(one)
                && one.Readings.ContainsKey(size)
            )
            .LastOrDefault();
        double? figure =
            state is null ? null
            : Strictest(state, isAlarm: false) is { } alert ? alert
            : Strictest(state, isAlarm: true);
        if (sample is null)
        {
            return new SizeColumn(null, null, false, "-", figure, Number(figure));
        }

        var count = sample.Readings[size].Value;
        return new SizeColumn(count, count, false, Number(count), figure, Number(figure), sample.TakenAt);
    }

    public static SizeColumn Of(double count, ScaleNumber? target)
    {
        var (asked, words) = Asking(target);
        return new SizeColumn(count, count, false, Number(count), asked, words);
    }

    public static SizeColumn Of(ScaleNumber number, ScaleNumber? target)
    {
        var (asked, words) = Asking(target);
        if (!number.HasNumber || number.Number > Iso4406.HighestScaleNumber)
        {
            var isBeyond = number.HasNumber || number == ScaleNumber.TooNumerous;
            return new SizeColumn(null, null, true, number.ToString(), asked, words, IsBeyondScale: isBeyond);
        }

        var high = Iso4406.UpperLimitPerMillilitre(number.Number);
        var low = number.Number == 0 ? high / 2 : Iso4406.LowerLimitPerMillilitre(number.Number);
        return new SizeColumn(low, high, true, number.ToString(), asked, words);
    }

    private static (double? Count, string Words) Asking(ScaleNumber? target) =>
        target is { HasNumber: true } asked && asked.Number <= Iso4406.HighestScaleNumber
            ? (Iso4406.UpperLimitPerMillilitre(asked.Number), asked.ToString())
            : (null, "");

    private static string Number(double? count) =>
        count is { } known ? CleanlinessCode.FromCounts(known, known, known).At4.ToString() : "";

    private static double? Strictest(MeasurandState state, bool isAlarm)
    {
        var figures = LimitFigure
            .Of(state)
            .Where(one => one.IsAlarm == isAlarm && one.Side == LimitSide.Upper && !one.IsStatistical)
            .Select(one => one.Value)
            .ToList();
        return figures.Count == 0 ? null : figures.Min();
    }
}
