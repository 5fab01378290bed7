using OilCondition.Prognosis;
using OilCondition.Text;
using OilCondition.Treatment;

namespace OilCondition;

/// <summary>When an alert is back after a treatment, if what brought it stays as it is.</summary>
/// <remarks>
/// Water: t = (c_alert − c_end)/r, with c_alert the lower of the alert figure and the saturation at standstill, and r the rise by what comes in. Particles:
/// t = ln(N_alert/N_end)/k, with k the rise of the logarithm since the last treatment or oil change. Ageing: as long as this oil fill took to its risk date.
/// The soonest of those that were asked counts.
/// </remarks>
internal sealed class Rebound(
    ConditionAssessment assessment,
    MachineTask task,
    TargetProposal target,
    IReadOnlyCollection<ProblemTopic> topics,
    DateTimeOffset riskDate
)
{
    private const double HorizonDays = LifeForecast.HorizonYears * 365.25;

    /// <summary>From a moment on at which the treatment has left this.</summary>
    public Arrival<DateTimeOffset> After(DateTimeOffset done, ITreatment treatment, TreatmentAssessment row)
    {
        var all = new List<Arrival<TimeSpan>>();
        if (topics.Contains(ProblemTopic.Water))
        {
            all.Add(Water(treatment, row));
        }

        if (topics.Contains(ProblemTopic.Dirt))
        {
            all.AddRange(
                assessment.States.Where(state => state.Measurand.Topic == MeasurandTopic.Particles).Select(Particles)
            );
        }

        if (topics.Contains(ProblemTopic.OilAgeing))
        {
            all.Add(Within((riskDate - assessment.Charge.Since).TotalDays));
        }

        var soonest = all.OfType<Arrival<TimeSpan>.Expected>().OrderBy(one => one.Estimate).FirstOrDefault();
        var chosen =
            soonest
            ?? all.OfType<Arrival<TimeSpan>.NotBefore>().OrderBy(one => one.Earliest).FirstOrDefault()
            ?? all.FirstOrDefault()
            ?? new Arrival<TimeSpan>.NotDetermined();
        return chosen.On(span => done + span);
    }

    private Arrival<TimeSpan> Water(ITreatment treatment, TreatmentAssessment row)
    {
        var job = task.Job;
        var end = target.Water?.PartsPerMillion ?? job.Contamination.Water.PartsPerMillion;
        if (treatment.Kind == TreatmentKind.DrainAndRefill)
        {
            // An oil change does not stop at the target: what went out with the old oil tells what stays.
            const double KilogramPerLitre = 0.9982;
            end =
                job.Contamination.Water.PartsPerMillion
                - 1e6 * row.WaterRemoved.Liters * KilogramPerLitre / job.OilMass.Kilograms;
        }

        var standstill = target.Standstill?.Content.PartsPerMillion ?? double.PositiveInfinity;
        var alert = Math.Min(target.LimitMgPerKg ?? double.PositiveInfinity, standstill);
        if (!Guard.IsFinite(alert))
        {
            return new Arrival<TimeSpan>.NotDetermined();
        }

        var margin = Math.Max(0, alert - end);
        var kilograms = job.OilMass.Kilograms;
        double Days(double kilogramsPerDay) => margin * kilograms / 1e6 / kilogramsPerDay;
        var stated = job.Reservoir.WaterIngress.KilogramsPerDay;
        return task.Ingress switch
        {
            null when stated > 0 => Within(Days(stated)),
            IngressEstimate.Rising { LitresPerDay: { Lower: { } low, Upper: { } high } } rising => Within(
                Days(high),
                Days(rising.Rate.KilogramsPerDay),
                Days(low)
            ),
            IngressEstimate.NoRiseShown { LitresPerDay: { Upper: { } most } } => most > 0
                ? NotBefore(Days(most))
                : new Arrival<TimeSpan>.Never(),
            _ => new Arrival<TimeSpan>.NotDetermined(),
        };
    }

    private Arrival<TimeSpan> Particles(MeasurandState state)
    {
        var figure = new FixedFigures(assessment.History.Machine.Oil, state.Measurand, assessment.Limits.Limits).First(
            LimitSide.Upper
        );
        var allowed =
            state.Measurand.Equals(Measurands.Particles4) ? target.Code?.At4
            : state.Measurand.Equals(Measurands.Particles6) ? target.Code?.At6
            : state.Measurand.Equals(Measurands.Particles14) ? target.Code?.At14
            : null;
        var trend = state.Trend.Assessment;
        return
            figure is { } alert
            && allowed is { } number
            && trend.Verdict == Statistics.TrendVerdict.Rising
            && trend.Scale == NaturalScale.Logarithmic
            && number.HighestPerMillilitre is var end
            && end < alert
            ? Within(Math.Log(alert / end) / trend.Slope)
            : new Arrival<TimeSpan>.NotDetermined();
    }

    private static Arrival<TimeSpan> NotBefore(double days) =>
        days < HorizonDays ? new Arrival<TimeSpan>.NotBefore(Elapsed.FromDays(days)) : new Arrival<TimeSpan>.Never();

    private static Arrival<TimeSpan> Within(double days) => Within(days, days, days);

    private static Arrival<TimeSpan> Within(double earliest, double estimate, double latest) =>
        !(estimate < HorizonDays)
            ? NotBefore(earliest)
            : new Arrival<TimeSpan>.Expected(
                Elapsed.FromDays(earliest),
                Elapsed.FromDays(estimate),
                Elapsed.FromDays(Math.Min(latest, HorizonDays))
            );
}
