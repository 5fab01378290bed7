using OilCondition.Text;
using UnitsNet;

namespace OilCondition;

/// <summary>A machine with one oil charge in it.</summary>
public sealed class Machine
{
    private const double LargestLiters = 1e9;

    /// <summary>A machine.</summary>
    /// <param name="id">Stable identifier, as in the maintenance system: any text without control characters.</param>
    /// <param name="name">What people call it.</param>
    /// <param name="oil">The oil in it.</param>
    /// <param name="chargeVolume">Volume of the oil charge, above 0 and up to a thousand million litres.</param>
    /// <param name="runningTemperature">Usual oil temperature in operation, −60 to 200 °C.</param>
    /// <param name="standstillTemperature">Lowest oil temperature after the machine has cooled down, −60 to 200 °C.</param>
    /// <exception cref="ArgumentException">A text is blank, or a quantity lies outside its range.</exception>
    public Machine(
        string id,
        string name,
        Oil oil,
        Volume chargeVolume,
        Temperature runningTemperature,
        Temperature standstillTemperature
    )
    {
        Id = Guard.NotBlank(id);
        if (id.Any(char.IsControl))
        {
            throw new ArgumentException($"id is '{id}'; a control character is not allowed.", nameof(id));
        }

        Name = Guard.NotBlank(name);
        Oil = Guard.NotNull(oil);
        Guard.Positive(chargeVolume.Liters, "L", nameof(chargeVolume));
        Guard.InRange(chargeVolume.Liters, 0, LargestLiters, "L", nameof(chargeVolume));
        ChargeVolume = chargeVolume;
        Text.OilTemperature.Celsius(runningTemperature);
        Text.OilTemperature.Celsius(standstillTemperature);
        RunningTemperature = runningTemperature;
        StandstillTemperature = standstillTemperature;
    }

    /// <summary>Stable identifier.</summary>
    public string Id { get; }

    /// <summary>What people call it.</summary>
    public string Name { get; }

    /// <summary>The oil in it.</summary>
    public Oil Oil { get; }

    /// <summary>Volume of the oil charge.</summary>
    public Volume ChargeVolume { get; }

    /// <summary>Usual oil temperature in operation.</summary>
    public Temperature RunningTemperature { get; }

    /// <summary>Lowest oil temperature after the machine has cooled down.</summary>
    public Temperature StandstillTemperature { get; }

    /// <summary>Id, name, oil and volume.</summary>
    /// <returns>For example <c>M1 governor, ISO VG 46, 1000 L, 60 °C running, 20 °C at standstill</c>.</returns>
    public override string ToString() =>
        $"{Id} {Name}, {Oil.Name}, {PlainText.Number(ChargeVolume.Liters)} L, "
        + $"{PlainText.Number(RunningTemperature.DegreesCelsius)} °C running, {PlainText.Number(StandstillTemperature.DegreesCelsius)} °C at standstill";
}
