namespace Schemas;

/// <summary>The unit at the end of a field's name, as people write it.</summary>
internal static class FieldUnits
{
    // The longer name first: 'LitresPerMinute' is no 'Minute', and 'KilowattHours' are no hours.
    private static readonly (string Ending, string Unit)[] Units =
    [
        ("KilogramsPerCubicMetre", "kg/m³"),
        ("CubicMetresPerHour", "m³/h"),
        ("KilogramsPerHour", "kg/h"),
        ("KilojoulePerKelvin", "kJ/K"),
        ("LitresPerMinute", "L/min"),
        ("PerMillilitre", "1/mL"),
        ("GramsPerHour", "g/h"),
        ("WattPerKelvin", "W/K"),
        ("KilowattHours", "kWh"),
        ("KilowattHour", "1/kWh"),
        ("HoursPerDay", "h/d"),
        ("Centistokes", "mm²/s"),
        ("SquareMetres", "m²"),
        ("Micrometres", "µm"),
        ("Millimetres", "mm"),
        ("MgPerKg", "mg/kg"),
        ("Kilowatts", "kW"),
        ("Millibar", "mbar"),
        ("Celsius", "°C"),
        ("OilHours", "h"),
        ("PerHour", "1/h"),
        ("Percent", "%"),
        ("Litres", "L"),
        ("Metres", "m"),
        ("Kelvin", "K"),
        ("Hours", "h"),
        ("Hour", "h"),
        ("Days", "d"),
    ];

    public static string? Of(string field)
    {
        var name = char.ToUpperInvariant(field[0]) + field[1..];
        foreach (var (ending, unit) in Units)
        {
            if (name.EndsWith(ending, StringComparison.Ordinal))
            {
                return unit;
            }
        }

        return null;
    }
}
