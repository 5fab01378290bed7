namespace OilCondition.Limits;

/// <summary>Limit sets to start from: editable JSON, every figure with its source class.</summary>
/// <remarks>
/// Starting points, not rules: the limits of the makers of machine and oil come first, then statistics of your own. No figure claims to follow
/// a standard that was not seen: such figures are marked 'from memory'. Fire-resistant fluids and engine oils are left out, because
/// the only public figures found come from one unnamed maker, laboratory or forum.
/// </remarks>
/// <example>
/// <code>
/// File.WriteAllText("turbine.json", StarterLimits.JsonOf(StarterEquipment.Turbine)); // edit, then
/// var limits = LimitSet.Parse(File.ReadAllText("turbine.json"));
/// </code>
/// </example>
public static class StarterLimits
{
    /// <summary>The text of a starting set, to be saved and edited.</summary>
    /// <param name="equipment">The kind of equipment.</param>
    /// <returns>JSON as <see cref="LimitSet.Parse"/> reads it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The kind is not one of the enumeration.</exception>
    public static string JsonOf(StarterEquipment equipment)
    {
        var name = equipment switch
        {
            StarterEquipment.Turbine => "turbine",
            StarterEquipment.Hydraulic => "hydraulic",
            StarterEquipment.Gear => "gear",
            StarterEquipment.Circulating => "circulating",
            StarterEquipment.InsulatingAbove170Kilovolt => "insulating-above-170kv",
            StarterEquipment.Insulating72To170Kilovolt => "insulating-72-to-170kv",
            StarterEquipment.InsulatingUpTo72Kilovolt => "insulating-up-to-72kv",
            _ => throw new ArgumentOutOfRangeException(nameof(equipment), equipment, "Not a kind of equipment."),
        };
        using var stream =
            typeof(StarterLimits).Assembly.GetManifestResourceStream($"starter-limits/{name}.json")
            ?? throw new InvalidOperationException($"The starting limits '{name}' are missing from the assembly.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>A starting set, ready for use.</summary>
    /// <param name="equipment">The kind of equipment.</param>
    /// <returns>The limit set.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The kind is not one of the enumeration.</exception>
    public static LimitSet Of(StarterEquipment equipment) => LimitSet.Parse(JsonOf(equipment));
}
