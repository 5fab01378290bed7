using System.Globalization;
using System.Text.RegularExpressions;
using OilCondition.Limits;
using OilCondition.Tests.Reference;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Limits;

/// <summary>Every figure of the starting sets against the row of limits.csv that it comes from.</summary>
public partial class StarterSetTests
{
    private const string File = "limits.csv";

    /// <summary>Rows behind the figures: equipment, measurand, side and zone, row id.</summary>
    private static readonly (StarterEquipment Equipment, string Measurand, string Figure, string Row)[] Rows =
    [
        (StarterEquipment.Turbine, "viscosity-40c", "upper alert", "TUR.visc"),
        (StarterEquipment.Turbine, "viscosity-40c", "lower alert", "TUR.visc"),
        (StarterEquipment.Turbine, "viscosity-40c", "upper alarm", "IND.visc.crit"),
        (StarterEquipment.Turbine, "viscosity-40c", "lower alarm", "IND.visc.crit"),
        (StarterEquipment.Turbine, "acid-number", "upper alert", "TUR.an.early"),
        (StarterEquipment.Turbine, "acid-number", "upper alarm", "TUR.an"),
        (StarterEquipment.Turbine, "rpvot", "lower alert", "TUR.rpvot.half"),
        (StarterEquipment.Turbine, "rpvot", "lower alarm", "TUR.rpvot"),
        (StarterEquipment.Turbine, "water-content", "upper alert", "TUR.water.target"),
        (StarterEquipment.Turbine, "water-content", "upper alarm", "TUR.water.caution"),
        (StarterEquipment.Turbine, "antioxidant", "lower alert", "TUR.ao.watch"),
        (StarterEquipment.Turbine, "antioxidant", "lower alarm", "TUR.ao"),
        (StarterEquipment.Turbine, "membrane-patch-colour", "upper alert", "TUR.mpc.abnormal"),
        (StarterEquipment.Turbine, "membrane-patch-colour", "upper alarm", "TUR.mpc.critical"),
        (StarterEquipment.Turbine, "particles-4um", "upper alert", "TUR.iso"),
        (StarterEquipment.Turbine, "particles-6um", "upper alert", "TUR.iso"),
        (StarterEquipment.Turbine, "particles-14um", "upper alert", "TUR.iso"),
        (StarterEquipment.Turbine, "flash-point", "lower alert", "TUR.flash"),
        (StarterEquipment.Hydraulic, "viscosity-40c", "upper alert", "IND.visc.caution"),
        (StarterEquipment.Hydraulic, "viscosity-40c", "lower alarm", "IND.visc.crit"),
        (StarterEquipment.Hydraulic, "acid-number", "upper alert", "IND.an.aw"),
        (StarterEquipment.Hydraulic, "acid-number", "upper alarm", "IND.an.aw"),
        (StarterEquipment.Hydraulic, "water-content", "upper alert", "HYS.water.caution"),
        (StarterEquipment.Hydraulic, "water-content", "upper alarm", "HYS.water.crit"),
        (StarterEquipment.Hydraulic, "relative-saturation", "upper alert", "HYS.water.sat"),
        (StarterEquipment.Hydraulic, "relative-saturation", "upper alarm", "HYS.water.sat"),
        (StarterEquipment.Hydraulic, "particles-4um", "upper alert", "HYS.iso.prop"),
        (StarterEquipment.Hydraulic, "particles-6um", "upper alert", "HYS.iso.prop"),
        (StarterEquipment.Hydraulic, "particles-14um", "upper alert", "HYS.iso.prop"),
        (StarterEquipment.Gear, "viscosity-40c", "upper alert", "IND.visc.caution"),
        (StarterEquipment.Gear, "water-content", "upper alert", "GEAR.water.gen"),
        (StarterEquipment.Gear, "water-content", "upper alarm", "GEAR.water.gen"),
        (StarterEquipment.Circulating, "viscosity-40c", "upper alarm", "IND.visc.crit"),
        (StarterEquipment.Circulating, "acid-number", "upper alert", "IND.an.rno"),
        (StarterEquipment.Circulating, "acid-number", "upper alarm", "IND.an.rno"),
        (StarterEquipment.Circulating, "water-content", "upper alert", "TUR.water.target"),
        (StarterEquipment.Circulating, "antioxidant", "lower alert", "TUR.ao.watch"),
        (StarterEquipment.InsulatingAbove170Kilovolt, "water-content", "upper alert", "INS.A.water"),
        (StarterEquipment.InsulatingAbove170Kilovolt, "water-content", "upper alarm", "INS.A.water"),
        (StarterEquipment.InsulatingAbove170Kilovolt, "acid-number", "upper alarm", "INS.A.acid"),
        (StarterEquipment.InsulatingAbove170Kilovolt, "breakdown-voltage", "lower alarm", "INS.A.bdv"),
        (StarterEquipment.Insulating72To170Kilovolt, "water-content", "upper alarm", "INS.B.water"),
        (StarterEquipment.Insulating72To170Kilovolt, "acid-number", "upper alarm", "INS.B.acid"),
        (StarterEquipment.Insulating72To170Kilovolt, "breakdown-voltage", "lower alert", "INS.B.bdv"),
        (StarterEquipment.InsulatingUpTo72Kilovolt, "water-content", "upper alert", "INS.C.water"),
        (StarterEquipment.InsulatingUpTo72Kilovolt, "acid-number", "upper alert", "INS.C.acid"),
        (StarterEquipment.InsulatingUpTo72Kilovolt, "breakdown-voltage", "lower alarm", "INS.C.bdv"),
    ];

    public static TheoryData<StarterEquipment> Equipment => [.. Enum.GetValues<StarterEquipment>()];

    public static TheoryData<StarterEquipment, string, string, string> Figures
    {
        get
        {
            var data = new TheoryData<StarterEquipment, string, string, string>();
            foreach (var (equipment, measurand, figure, row) in Rows)
            {
                data.Add(equipment, measurand, figure, row);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Equipment))]
    public void Each_set_reads_and_carries_a_source_for_every_limit(StarterEquipment equipment)
    {
        var set = LimitSet.Starter(equipment);

        set.Limits.Count.ShouldBeGreaterThan(2);
        set.Name.ShouldEndWith("starting points");
        set.Limits.ShouldAllBe(limit => limit.Source.Text.Length > 10);

        // No standard was seen, so none may be claimed as the source.
        set.Limits.ShouldAllBe(limit => limit.Source.Kind != SourceKind.Standard);
        LimitSet.StarterJson(equipment).ShouldNotContain("according to");

        // Alert and alarm are the words; a second scale beside them would have to be learnt.
        var texts = set.Limits.Select(limit => $"{limit.Source.Text} {limit.Note}");
        texts.ShouldAllBe(text => !OtherScale().IsMatch(text));
    }

    [Theory]
    [MemberData(nameof(Figures))]
    [Trait("Category", "Reference")]
    public void A_figure_is_the_one_of_its_row_and_of_its_source_class(
        StarterEquipment equipment,
        string measurand,
        string figure,
        string row
    )
    {
        var (limit, value) = Find(equipment, measurand, figure);
        var reference = ReferenceFolder.Case(File, row);
        var magnitude = measurand.StartsWith("particles", StringComparison.Ordinal)
            ? ScaleNumberOf(value)
            : Math.Abs(limit.Kind == LimitKind.PercentChangeFromNew && measurand == "rpvot" ? 100 + value : value);

        var numbers = Number()
            .Matches(reference.Value)
            .Select(match => double.Parse(match.Value, CultureInfo.InvariantCulture));
        numbers.ShouldContain(number => Math.Abs(number - magnitude) < 1e-9);
        SourceKind[] allowed = reference.SourceClass switch
        {
            "recalled" => [SourceKind.FromMemory],
            "common-practice" => [SourceKind.CommonPractice, SourceKind.FromMemory],
            _ => [SourceKind.Paper, SourceKind.Handbook],
        };
        allowed.ShouldContain(limit.Source.Kind);
    }

    [Fact]
    public void No_figure_comes_from_one_unnamed_maker_laboratory_or_forum() =>
        Rows.Select(one => ReferenceFolder.Case(File, one.Row).Source)
            .Where(source => source.Contains("not named") || source.Contains("forum"))
            .ShouldBeEmpty();

    [Fact]
    public void The_sets_work_on_a_machine()
    {
        var set = LimitSet.Starter(StarterEquipment.Turbine);
        var acid = set.Limits.Single(limit => limit.Measurand.Equals(Measurands.AcidNumber));

        acid.Evaluate(Invented.Oil, new Reading(0.45)).State.ShouldBe(LimitState.Alarm); // new 0.1, rise 0.35
        acid.Evaluate(Invented.Oil, new Reading(0.35)).State.ShouldBe(LimitState.Alert);
    }

    [Fact]
    public void An_unknown_kind_of_equipment_is_refused() =>
        Should.Throw<ArgumentOutOfRangeException>(() => LimitSet.StarterJson((StarterEquipment)99));

    private static (Limit Limit, double Value) Find(StarterEquipment equipment, string measurand, string figure)
    {
        double? Of(Limit limit) =>
            figure switch
            {
                "upper alert" => limit.Upper?.Alert,
                "upper alarm" => limit.Upper?.Alarm,
                "lower alert" => limit.Lower?.Alert,
                _ => limit.Lower?.Alarm,
            };
        var found = LimitSet
            .Starter(equipment)
            .Limits.Single(limit => limit.Measurand.Id == measurand && Of(limit) is not null);
        return (found, Of(found)!.Value);
    }

    /// <summary>Scale number from its upper count: the nearest power of two will do to name it.</summary>
    private static double ScaleNumberOf(double count) => Math.Round(Math.Log(count / 0.01, 2));

    [GeneratedRegex(
        @"\b(caution|warning|critical|abnormal|severe|marginal|fair|poor)\b",
        RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex OtherScale();

    [GeneratedRegex(@"\d+(\.\d+)?", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Number();
}
