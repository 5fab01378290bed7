using OilCondition.Sampling;

namespace OilCondition.Limits;

/// <summary>One side of a comparison: the state, and the figure that was passed.</summary>
internal readonly record struct LimitSideState(LimitState State, double? Figure)
{
    private static LimitSideState Clear => new(LimitState.Normal, null);

    private static LimitSideState Undecided => new(LimitState.NotDetermined, null);

    /// <summary>Holds a reading against both sides, every figure moved inwards by a dead band.</summary>
    public static LimitSideState Of(LimitBand? upper, LimitBand? lower, Reading reading, double deadBand)
    {
        var above = upper is null ? Clear : Above(upper, reading, deadBand);
        var below = lower is null ? Clear : Below(lower, reading, deadBand);
        var worst = above.State >= below.State ? above : below;
        var undecided = above.State == LimitState.NotDetermined || below.State == LimitState.NotDetermined;
        return undecided && worst.State < LimitState.Alert ? Undecided : worst;
    }

    private static LimitSideState Above(LimitBand band, Reading reading, double deadBand)
    {
        // A reading of '<x' is anywhere below x: it clears the lowest figure at or above x and decides nothing below that.
        var lowestFigure = (band.Alert ?? band.Alarm!.Value) - deadBand;
        if (reading.Qualifier == Qualifier.LessThan)
        {
            return reading.Value <= lowestFigure ? Clear : Undecided;
        }

        var atLeast = reading.Qualifier == Qualifier.GreaterThan;
        bool Beyond(double figure) => atLeast ? reading.Value >= figure - deadBand : reading.Value > figure - deadBand;
        if (band.Alarm is { } alarm && Beyond(alarm))
        {
            return new LimitSideState(LimitState.Alarm, alarm);
        }

        if (band.Alert is { } alert && Beyond(alert))
        {
            return new LimitSideState(LimitState.Alert, alert);
        }

        return atLeast ? Undecided : Clear;
    }

    private static LimitSideState Below(LimitBand band, Reading reading, double deadBand)
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
        var side = Above(band.Map(figure => -figure), mirrored, deadBand);
        return side with { Figure = -side.Figure };
    }
}
