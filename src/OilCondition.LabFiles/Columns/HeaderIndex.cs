namespace OilCondition.LabFiles;

/// <summary>What each name of a column map stands for, so that a header is found at once however many columns a file has.</summary>
internal sealed class HeaderIndex
{
    private readonly Dictionary<string, LabColumn> readings = new(StringComparer.Ordinal);
    private readonly Dictionary<Measurand, LabColumn> ofMeasurand = [];
    private readonly HashSet<string> viscosities;
    private readonly HashSet<string> codes;

    public HeaderIndex(ColumnMap map)
    {
        foreach (var column in map.Columns)
        {
            Add(column, column.Names);
        }

        foreach (var measurand in map.Catalog.All)
        {
            Add(new LabColumn([measurand.Id], measurand) { IsDefault = true }, [measurand.Id, measurand.Name]);
        }

        viscosities = [.. map.Viscosity.Select(HeaderText.Bare)];
        codes = [.. map.CleanlinessCode.Select(HeaderText.Bare)];
    }

    /// <summary>The column that a name alone stands for; null for none.</summary>
    public NamedColumn? Find(string name)
    {
        var bare = HeaderText.Bare(name);
        if (bare.Length == 0)
        {
            return null;
        }

        if (readings.TryGetValue(bare, out var column))
        {
            return new NamedColumn(column);
        }

        if (codes.Contains(bare))
        {
            return new NamedColumn(Code: true);
        }

        if (viscosities.Contains(bare))
        {
            return new NamedColumn(Viscosity: true);
        }

        return
            HeaderText.TrySplitTemperature(bare, out var viscosity, out var celsius) && viscosities.Contains(viscosity)
            ? new NamedColumn(Viscosity: true, Celsius: celsius)
            : null;
    }

    /// <summary>The column of a viscosity at a temperature; null where no measurand is at that temperature.</summary>
    public LabColumn? ViscosityAt(double celsius)
    {
        // 104 °F is 40 °C and 212 °F is 100 °C; 210 °F is 98.9 °C, at which an oil is a thirtieth thicker than at 100.
        const double Tolerance = 0.1;
        return Math.Abs(celsius - 40) <= Tolerance ? ofMeasurand[Measurands.Viscosity40]
            : Math.Abs(celsius - 100) <= Tolerance ? ofMeasurand[Measurands.Viscosity100]
            : null;
    }

    private void Add(LabColumn column, IEnumerable<string> names)
    {
        foreach (
            var bare in names.Select(HeaderText.Bare).Where(bare => bare.Length > 0 && !readings.ContainsKey(bare))
        )
        {
            readings.Add(bare, column);
        }

        if (!ofMeasurand.ContainsKey(column.Measurand) && !column.IsScaleNumber)
        {
            ofMeasurand.Add(column.Measurand, column);
        }
    }
}
