using System.Globalization;
using OilCondition;
using OilCondition.Limits;
using OilCondition.Prognosis;
using UnitsNet;

namespace HarrowPoint;

/// <summary>Questions that come up when the report is read: a warmer sump, oil that has no trend yet, other limits.</summary>
public static class WhatIf
{
    /// <summary>How long earlier oil fills of such machines lasted, and those still in service: invented, like the station.</summary>
    private static readonly TimeSpan[] Changed =
    [
        TimeSpan.FromHours(21_000),
        TimeSpan.FromHours(26_500),
        TimeSpan.FromHours(30_200),
        TimeSpan.FromHours(34_800),
    ];

    private static readonly TimeSpan[] InService = [TimeSpan.FromHours(18_000), TimeSpan.FromHours(27_000)];

    private static readonly Density Density870 = Density.FromKilogramsPerCubicMeter(870);

    public static void Write(TextWriter to, IReadOnlyList<ConditionAssessment> assessments)
    {
        var pump = assessments.Single(one => one.History.Machine.Id == "HP-CWP2");
        to.WriteLine();
        to.WriteLine("== What if");
        var life = pump
            .States.Single(state => state.Measurand.Equals(Measurands.AcidNumber))
            .Lives.OfType<RemainingLife.Forecast>()
            .Single();
        var warmer = life.Crossing.WithAgeing(ThermalAgeing.TenDegreeRule(TemperatureDelta.FromDegreesCelsius(10)));
        to.WriteLine($"   HP-CWP2 as it is: {life}");
        to.WriteLine($"   HP-CWP2 with oil 10 °C warmer from now on (rule of thumb): {warmer}");

        var fleet = FleetLife.From(Changed, InService);
        var next = fleet.Forecast(TimeSpan.Zero, pump.Options.AsOf);
        to.WriteLine($"   Its next oil fill, from the lives of earlier ones: {fleet}; {next}");

        to.WriteLine("   Water that comes in, from the titrations between treatments and oil changes:");
        foreach (var assessment in assessments)
        {
            var estimate = IngressEstimate.Of(assessment.History, Density870, assessment.Options.AsOf);
            to.WriteLine($"     {assessment.History.Machine.Id}: {estimate}");
        }

        var starting = LimitSet.Starter(StarterEquipment.Circulating);
        var compared = ConditionAssessor.Assess(pump.History, starting, pump.Options);
        to.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"   HP-CWP2 against '{starting.Name}': {compared.Findings.Count(one => one.Severity >= Severity.Alert)} findings that ask for action; with its own limits {pump.Findings.Count(one => one.Severity >= Severity.Alert)}"
            )
        );
    }
}
