using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Prognosis;

/// <summary>How fast the paper of an oil-filled transformer ages at a hot-spot temperature, relative to its reference temperature.</summary>
/// <remarks>
/// The laws are not interchangeable: near 110 °C the first doubles in 6.9 °C, the last in 6. Water and oxygen speed ageing up and are not in them.
/// Valid for hot spots of about 80 to 140 °C (from memory); above that gas bubbles are a nearer danger than age. Sources at <see cref="InsulationPaper"/>.
/// </remarks>
internal static class InsulationAgeing
{
    /// <summary>Ageing rate at a hot-spot temperature over the reference rate.</summary>
    /// <param name="paper">Which paper.</param>
    /// <param name="hotSpot">Temperature of the hottest spot of the winding, −60 to 200 °C.</param>
    /// <returns>1 at the reference temperature.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature or the paper is outside its range.</exception>
    public static Ratio Acceleration(InsulationPaper paper, Temperature hotSpot)
    {
        var celsius = OilTemperature.Celsius(hotSpot);
        return Ratio.FromDecimalFractions(
            paper switch
            {
                InsulationPaper.Upgraded65Rise => Math.Exp(15000.0 / 383 - 15000 / (celsius + 273)),
                InsulationPaper.Kraft55Rise => Math.Exp(15000.0 / 368 - 15000 / (celsius + 273)),
                InsulationPaper.KraftSixDegreeRule => Math.Pow(2, (celsius - 98) / 6),
                _ => throw new ArgumentOutOfRangeException(
                    nameof(paper),
                    $"paper is {paper}; allowed: a named member."
                ),
            }
        );
    }

    /// <summary>Mean ageing rate over a cycle, Σ F Δt / Σ Δt.</summary>
    /// <param name="paper">Which paper.</param>
    /// <param name="cycle">Hot-spot temperatures with how long each lasts, above 0; at least one.</param>
    /// <returns>1 for a whole cycle at the reference temperature.</returns>
    /// <exception cref="ArgumentException">The cycle is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A temperature or a duration is outside its range.</exception>
    public static Ratio MeanAcceleration(
        InsulationPaper paper,
        IReadOnlyList<(Temperature HotSpot, TimeSpan Time)> cycle
    )
    {
        if (Guard.NotNull(cycle).Count == 0)
        {
            throw new ArgumentException("cycle is empty; at least one step is required.", nameof(cycle));
        }

        double aged = 0;
        double hours = 0;
        foreach (var (hotSpot, time) in cycle)
        {
            var step = Guard.Positive(time.TotalHours, "h", nameof(cycle));
            aged += Acceleration(paper, hotSpot).DecimalFractions * step;
            hours += step;
        }

        return Ratio.FromDecimalFractions(aged / hours);
    }

    /// <summary>Share of the paper's life that a time takes.</summary>
    /// <param name="meanAcceleration">Mean ageing rate, 0 or more.</param>
    /// <param name="time">How long, 0 or more.</param>
    /// <param name="normalLife">Life at the reference temperature, above 0; 180 000 h is the customary figure of IEEE Std C57.91.</param>
    /// <returns>The share.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure is outside its range.</exception>
    public static Ratio LossOfLife(Ratio meanAcceleration, TimeSpan time, TimeSpan normalLife) =>
        Ratio.FromDecimalFractions(
            Guard.NotNegative(meanAcceleration.DecimalFractions, "", nameof(meanAcceleration))
                * Guard.NotNegative(time.TotalHours, "h", nameof(time))
                / Guard.Positive(normalLife.TotalHours, "h", nameof(normalLife))
        );
}
