namespace OilCondition.LabFiles;

/// <summary>Finds out what one header says: a name that the map knows, and behind it unit, method or temperature.</summary>
internal sealed class ColumnMatch(HeaderIndex index)
{
    public Column Of(int number, string header)
    {
        if (index.Find(header) is { } whole)
        {
            return Made(number, header, whole, new Parts());
        }

        foreach (var (name, rest) in HeaderText.Splits(header))
        {
            if (index.Find(name) is { } known && Read(rest, known) is { } parts)
            {
                return Made(number, header, known, parts);
            }
        }

        return new Column(number, header, ColumnUse.Text);
    }

    private Column Made(int number, string header, NamedColumn known, Parts parts)
    {
        if (known.Code && parts.Scale is { } scale)
        {
            return new Column(number, header, ColumnUse.Reading).WithReading(scale, "", "");
        }

        if (known.Code)
        {
            return new Column(number, header, ColumnUse.CleanlinessCode);
        }

        var isViscosity = known.Viscosity || IsViscosity(known.Column!.Measurand);
        var column = new Column(number, header, ColumnUse.Reading) { IsViscosity = isViscosity };
        if (!known.Viscosity)
        {
            return column.WithReading(known.Column!, parts.Unit, parts.Method);
        }

        if ((known.Celsius ?? parts.Celsius) is not { } celsius)
        {
            // The row will say; both viscosities have one unit.
            return column.WithUnit(index.ViscosityAt(40)!, parts.Unit);
        }

        if (index.ViscosityAt(celsius) is { } reading)
        {
            return column.WithReading(reading, parts.Unit, parts.Method);
        }

        column.KeepAsText($"a viscosity at {celsius:0.#} °C is none at 40 or 100 °C, and was not taken for one");
        return column;
    }

    /// <summary>What stands behind a name; null where it belongs to the name, as in 'lead time'.</summary>
    private Parts? Read(string rest, NamedColumn known)
    {
        var column = known.Column ?? (known.Viscosity ? index.ViscosityAt(40) : null);
        if (known.Code)
        {
            return new Parts(Scale: ScaleOf(rest));
        }

        if (column!.Takes(rest))
        {
            return new Parts(Unit: rest);
        }

        var parts = new Parts();
        var isBracket = rest[0] is '(' or '[';
        foreach (var part in HeaderText.Parts(rest))
        {
            if (column.Takes(part))
            {
                parts = parts with { Unit = part };
            }
            else if (HeaderText.IsMethod(part))
            {
                parts = parts with { Method = part };
            }
            else if (
                known.Viscosity
                && HeaderText.TrySplitTemperature(HeaderText.Bare(part), out var word, out var celsius)
                && word.Length == 0
            )
            {
                parts = parts with { Celsius = celsius };
            }
            else if (isBracket && !IsSynonym(part, column))
            {
                // A unit that is not understood: its cells are refused with it, and not read without.
                parts = parts with
                {
                    Unit = part,
                };
            }
            else if (!isBracket && !IsSynonym(part, column))
            {
                return null;
            }
        }

        return parts;
    }

    /// <summary>Scale numbers of one size: a code's name with '4 µm(c)' behind it.</summary>
    private LabColumn? ScaleOf(string rest)
    {
        var size = HeaderText.Bare(rest).Replace("um", "").TrimStart('>');
        return size is "4" or "6" or "14" ? index.Find($"iso {size}um")?.Column : null;
    }

    private static bool IsViscosity(Measurand measurand) =>
        measurand.Equals(Measurands.Viscosity40) || measurand.Equals(Measurands.Viscosity100);

    private bool IsSynonym(string part, LabColumn column) =>
        index.Find(part)?.Column is { } other && other.Measurand.Equals(column.Measurand);

    private sealed record Parts(string Unit = "", string Method = "", double? Celsius = null, LabColumn? Scale = null);
}
