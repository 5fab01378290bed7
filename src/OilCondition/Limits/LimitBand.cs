using OilCondition.Text;

namespace OilCondition.Limits;

/// <summary>An alert and an alarm figure on one side. A reading beyond the figure is in the zone; on the figure it is not.</summary>
public sealed record LimitBand
{
    /// <summary>Beyond any plausible figure, and far enough from the end of the numbers to calculate with.</summary>
    internal const double Largest = 1e100;

    /// <summary>A band.</summary>
    /// <param name="alert">Where the alert zone begins; null for none.</param>
    /// <param name="alarm">Where the alarm zone begins; null for none.</param>
    /// <exception cref="ArgumentException">Both are null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure is not finite or lies beyond 1e100.</exception>
    public LimitBand(double? alert, double? alarm)
    {
        if (alert is null && alarm is null)
        {
            throw new ArgumentException("A band needs an alert or an alarm figure.", nameof(alert));
        }

        Alert = alert is { } first ? Text.Guard.InRange(first, -Largest, Largest, "", nameof(alert)) : null;
        Alarm = alarm is { } second ? Text.Guard.InRange(second, -Largest, Largest, "", nameof(alarm)) : null;
    }

    /// <summary>Where the alert zone begins; null for none.</summary>
    public double? Alert { get; }

    /// <summary>Where the alarm zone begins; null for none.</summary>
    public double? Alarm { get; }

    internal LimitBand Map(Func<double, double> map) =>
        new(Alert is { } alert ? map(alert) : null, Alarm is { } alarm ? map(alarm) : null);

    /// <summary>Alert and alarm figure.</summary>
    /// <returns>For example <c>alert 200, alarm 500</c>.</returns>
    public override string ToString() =>
        string.Join(
            ", ",
            new[]
            {
                Alert is { } alert ? $"alert {PlainText.Reported(alert)}" : null,
                Alarm is { } alarm ? $"alarm {PlainText.Reported(alarm)}" : null,
            }.OfType<string>()
        );
}
