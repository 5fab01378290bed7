namespace OilCondition.Charts.Drawing;

/// <summary>A measurand as the sentences give it: its name, its unit, and its figures in that unit.</summary>
internal sealed class Shown(ChartTexts texts, Measurand measurand)
{
    private readonly Sentences sentences = texts.Sentences;

    public string Name => sentences.Name(measurand);

    /// <summary>Name and unit of an axis.</summary>
    public string Label => In(Name);

    /// <summary>A name with the unit.</summary>
    public string In(string name) => sentences.Unit(measurand) is { Length: > 0 } unit ? $"{name}, {unit}" : name;

    /// <summary>A figure in the unit that is shown.</summary>
    public double From(double figure) => sentences.Value(figure, measurand);

    /// <summary>A difference in the unit that is shown: what a scale is shifted by does not count.</summary>
    public double Change(double difference) => From(difference) - From(0);

    /// <summary>A reading with its mark and unit.</summary>
    public string Text(Reading reading) => sentences.Text(reading, measurand);

    /// <summary>A figure with its unit.</summary>
    public string Text(double figure) => Text(new Reading(figure));

    /// <summary>A figure with its unit, as exact as the test method makes it at a reading.</summary>
    public string Exact(double figure, double? measured = null) =>
        $"{sentences.Number(figure, measurand, measured)} {sentences.Unit(measurand)}".TrimEnd();

    /// <summary>A difference with its unit.</summary>
    public string ChangeText(double difference) =>
        $"{texts.Reported(Change(difference))} {sentences.Unit(measurand)}".TrimEnd();
}
