using OilCondition.Guards;
using OilCondition.Sampling;
using OilCondition.Sources;

namespace OilCondition.Limits;

/// <summary>The limits of one measurand, with where they come from.</summary>
public sealed class Limit
{
    /// <summary>A limit.</summary>
    /// <param name="measurand">What is limited.</param>
    /// <param name="kind">What the figures are measured from.</param>
    /// <param name="upper">Figures not to be exceeded; null for none.</param>
    /// <param name="lower">Figures not to be undercut; null for none.</param>
    /// <param name="source">Where the figures come from.</param>
    /// <exception cref="ArgumentException">There is neither an upper nor a lower band, or the alarm comes before the alert.</exception>
    public Limit(Measurand measurand, LimitKind kind, LimitBand? upper, LimitBand? lower, Source source)
    {
        Measurand = Guard.NotNull(measurand, nameof(measurand));
        Source = Guard.NotNull(source, nameof(source));
        Kind = kind;
        if (upper is null && lower is null)
        {
            throw new ArgumentException(
                $"The limit of {measurand.Id} has neither an upper nor a lower band.",
                nameof(upper)
            );
        }

        if (upper is { Alert: { } upperAlert, Alarm: { } upperAlarm } && upperAlarm < upperAlert)
        {
            throw new ArgumentException(
                $"The upper limit of {measurand.Id} has its alarm ({upperAlarm}) below its alert ({upperAlert}).",
                nameof(upper)
            );
        }

        if (lower is { Alert: { } lowerAlert, Alarm: { } lowerAlarm } && lowerAlarm > lowerAlert)
        {
            throw new ArgumentException(
                $"The lower limit of {measurand.Id} has its alarm ({lowerAlarm}) above its alert ({lowerAlert}).",
                nameof(lower)
            );
        }

        Upper = upper;
        Lower = lower;
    }

    /// <summary>What is limited.</summary>
    public Measurand Measurand { get; }

    /// <summary>What the figures are measured from.</summary>
    public LimitKind Kind { get; }

    /// <summary>Figures not to be exceeded; null for none.</summary>
    public LimitBand? Upper { get; }

    /// <summary>Figures not to be undercut; null for none.</summary>
    public LimitBand? Lower { get; }

    /// <summary>Where the figures come from.</summary>
    public Source Source { get; }

    /// <summary>This limit as figures of the reading itself, for one oil.</summary>
    /// <remarks>Change: new value + figure. Percentage: new value (1 + figure / 100); a lower figure is negative.</remarks>
    /// <param name="oil">The oil, for its new-oil values.</param>
    /// <param name="absolute">The limit on the reading itself, or null.</param>
    /// <returns>False when the limit is a change and the new-oil value is missing or only bounded.</returns>
    public bool TryResolve(Oil oil, out Limit? absolute)
    {
        Guard.NotNull(oil, nameof(oil));
        absolute = Kind == LimitKind.Absolute ? this : null;
        if (Kind == LimitKind.Absolute)
        {
            return true;
        }

        if (!oil.NewReadings.TryGetValue(Measurand, out var reading) || reading.IsCensored)
        {
            return false;
        }

        var map =
            Kind == LimitKind.ChangeFromNew
                ? new Func<double, double>(figure => reading.Value + figure)
                : figure => reading.Value * (1 + figure / 100);
        absolute = new Limit(Measurand, LimitKind.Absolute, Upper?.Map(map), Lower?.Map(map), Source);
        return true;
    }

    /// <summary>Holds a reading against this limit.</summary>
    /// <param name="oil">The oil, for its new-oil values.</param>
    /// <param name="reading">The reading, in the measurand's unit; null when there is none.</param>
    /// <returns>The state and its reason.</returns>
    public LimitEvaluation Evaluate(Oil oil, Reading? reading)
    {
        if (!TryResolve(oil, out var absolute))
        {
            return new LimitEvaluation(this, LimitState.NotDetermined, LimitReason.NewOilValueMissing, reading, null);
        }

        if (reading is not { } value)
        {
            return new LimitEvaluation(this, LimitState.NotDetermined, LimitReason.NoReading, null, null);
        }

        var upper = absolute!.Upper is { } above ? Side.Above(above, value) : Side.Clear;
        var lower = absolute.Lower is { } below ? Side.Below(below, value) : Side.Clear;
        var worst = upper.State >= lower.State ? upper : lower;
        var undecided = upper.State == LimitState.NotDetermined || lower.State == LimitState.NotDetermined;
        return undecided && worst.State < LimitState.Alert
            ? new LimitEvaluation(this, LimitState.NotDetermined, LimitReason.BoundDoesNotDecide, value, null)
            : new LimitEvaluation(this, worst.State, LimitReason.Compared, value, worst.Figure);
    }

    /// <summary>One side of the comparison: the state, and the figure that was passed.</summary>
    private readonly record struct Side(LimitState State, double? Figure)
    {
        public static Side Clear => new(LimitState.Normal, null);

        public static Side Above(LimitBand band, Reading reading)
        {
            // A reading of '<x' is anywhere below x: it clears the lowest figure at or above x and decides nothing below that.
            var lowestFigure = band.Alert ?? band.Alarm!.Value;
            if (reading.Qualifier == Qualifier.LessThan)
            {
                return reading.Value <= lowestFigure ? Clear : new Side(LimitState.NotDetermined, null);
            }

            var atLeast = reading.Qualifier == Qualifier.GreaterThan;
            bool Beyond(double figure) => atLeast ? reading.Value >= figure : reading.Value > figure;
            if (band.Alarm is { } alarm && Beyond(alarm))
            {
                return new Side(LimitState.Alarm, alarm);
            }

            if (band.Alert is { } alert && Beyond(alert))
            {
                return new Side(LimitState.Alert, alert);
            }

            return atLeast ? new Side(LimitState.NotDetermined, null) : Clear;
        }

        public static Side Below(LimitBand band, Reading reading)
        {
            var mirrored = new Reading(
                -reading.Value,
                reading.Qualifier switch
                {
                    Qualifier.LessThan => Qualifier.GreaterThan,
                    Qualifier.GreaterThan => Qualifier.LessThan,
                    var same => same,
                }
            );
            var side = Above(band.Map(figure => -figure), mirrored);
            return side with { Figure = -side.Figure };
        }
    }
}
