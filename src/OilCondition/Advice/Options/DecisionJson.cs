using System.Text.Json;
using OilCondition.Text;

namespace OilCondition;

/// <summary>Writes a decision as JSON: facts as numbers with units in their names, and the sentences beside them.</summary>
internal static class DecisionJson
{
    public static string Write(TreatmentDecision decision) =>
        JsonText.Write(
            JsonFormat.Decision,
            json =>
            {
                json.WriteString("machine", decision.Assessment.History.Machine.Id);
                json.WriteMoment("asOf", decision.Assessment.Options.AsOf);
                json.WriteStartArray("subjects");
                foreach (var problem in decision.Problems)
                {
                    json.WriteStringValue(problem.Subject);
                }

                json.WriteEndArray();
                json.WriteString("recommendation", DecisionWords.Recommendation(decision));
                json.WriteString("choice", decision.Choice?.Id);
                json.WriteMoment("riskDate", decision.RiskDate);
                json.WriteString("riskReason", decision.RiskReason);
                json.WriteString("missing", decision.Missing);
                json.WriteBoolean("underWay", decision.UnderWay is not null);
                json.WriteBoolean("metAlready", decision.IsMetAlready);
                Target(json, decision.Target);
                json.WriteString("rule", decision.DecisionOptions.Rule.Statement);
                json.WriteString("rankedBy", decision.ByCost ? "cost" : "hours");
                json.WriteStartArray("options");
                foreach (var option in decision.Options)
                {
                    Option(json, option);
                }

                json.WriteEndArray();
                Waiting(json, decision.Waiting);
                Sample(json, decision.OneMoreSample);
                json.WriteStartArray("needs");
                foreach (var item in decision.Sizing)
                {
                    json.WriteStringValue(item);
                }

                json.WriteEndArray();
                json.WriteStartArray("figures");
                foreach (var figure in decision.Figures)
                {
                    json.WriteStartObject();
                    json.WriteString("figure", figure.Item.ToString());
                    json.WriteString("source", figure.Source.ToString());
                    json.WriteBoolean("assumed", figure.IsAssumed);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteStartArray("cautions");
                foreach (var caution in DecisionWords.Cautions(decision))
                {
                    json.WriteStringValue(caution);
                }

                json.WriteEndArray();
            }
        );

    private static void Target(Utf8JsonWriter json, TargetProposal target)
    {
        json.WriteStartObject("target");
        Figure(json, "waterMgPerKg", target.Water?.PartsPerMillion);
        json.WriteString("waterSetBy", target.Bound is { } bound ? PlainText.Kebab(bound) : null);
        Figure(json, "saturationAtStandstillMgPerKg", target.Standstill?.Content.PartsPerMillion);
        Figure(json, "recordedTargetMgPerKg", target.StatedMgPerKg);
        json.WriteBoolean("standstillBreaksRecordedTarget", target.StandstillBreaksStated);
        json.WriteBoolean("standstillBreaksLimit", target.StandstillBreaksLimit);
        json.WriteString("code", target.Code?.ToString());
        json.WriteString("sentence", target.ToString());
        json.WriteEndObject();
    }

    private static void Option(Utf8JsonWriter json, TreatmentOption option)
    {
        json.WriteStartObject();
        json.WriteString("id", option.Id);
        json.WriteString("name", option.Name);
        json.WriteString("verdict", PlainText.Kebab(option.Verdict));
        json.WriteString("ruledOut", option.RuledOut);
        json.WriteString("plannedBy", option.Experience);
        json.WriteString("whyNot", option.WhyNot is { } reason ? PlainText.Kebab(reason) : null);
        json.WriteFigure("probability", option.Probability.DecimalFractions);
        json.WriteFigure("probabilityInTime", option.ProbabilityInTime.DecimalFractions);
        Moment(json, "begins", option.Begins);
        Moment(json, "doneP10", option.DoneP10);
        Moment(json, "doneP50", option.DoneP50);
        Moment(json, "doneP90", option.DoneP90);
        var band = option.Assessment?.Band;
        Figure(json, "hoursP10", band?.TimeP10?.TotalHours);
        Figure(json, "hoursP50", band?.TimeP50?.TotalHours);
        Figure(json, "hoursP90", band?.TimeP90?.TotalHours);
        Figure(json, "boundHours", option.Bound?.TotalHours);
        Figure(json, "floorP50MgPerKg", option.Floor?.PartsPerMillion);
        Figure(json, "energyKilowattHours", (option.Assessment?.Heat + option.Assessment?.Electricity)?.KilowattHours);
        Figure(json, "elements", option.Assessment?.Elements);
        Figure(json, "newOilLitres", option.Assessment?.NewOil.Liters);
        Figure(json, "costP10", option.Cost?.P10);
        Figure(json, "costP50", option.Cost?.P50);
        Figure(json, "costP90", option.Cost?.P90);
        json.WriteString("currency", option.Cost?.Currency);
        json.WriteBoolean("costComplete", option.Cost?.IsComplete ?? false);
        Moment(json, "alertBack", option.Rebound is { } back && back.TryEstimate(out var at) ? at : null);
        json.WriteString("sentence", option.ToString());
        json.WriteEndObject();
    }

    private static void Waiting(Utf8JsonWriter json, WaitingOutlook waiting)
    {
        json.WriteStartObject("waiting");
        Figure(json, "freeWaterHoursSoFar", waiting.FreeWaterSoFar?.TotalHours);
        Figure(json, "freeIfStoppedHoursSoFar", waiting.FreeIfStoppedSoFar?.TotalHours);
        json.WriteStartArray("until");
        foreach (var step in waiting.Steps)
        {
            json.WriteStartObject();
            json.WriteString("name", step.Name);
            json.WriteMoment("at", step.At);
            Figure(json, "chanceOfAlert", step.ChanceOfAlert?.DecimalFractions);
            Figure(json, "chanceOfAlarm", step.ChanceOfAlarm?.DecimalFractions);
            Figure(json, "freeWaterHours", step.FreeWaterToCome?.TotalHours);
            Figure(json, "freeIfStoppedHours", step.FreeIfStoppedToCome?.TotalHours);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Sample(Utf8JsonWriter json, SampleValue? sample)
    {
        if (sample is null)
        {
            json.WriteNull("oneMoreSample");
            return;
        }

        json.WriteStartObject("oneMoreSample");
        json.WriteFigure("changesChoiceIn", sample.ChangesIn.DecimalFractions);
        json.WriteString("sentence", sample.ToString());
        json.WriteEndObject();
    }

    private static void Figure(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number)
        {
            json.WriteFigure(name, number);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    private static void Moment(Utf8JsonWriter json, string name, DateTimeOffset? at)
    {
        if (at is { } moment)
        {
            json.WriteMoment(name, moment);
        }
        else
        {
            json.WriteNull(name);
        }
    }
}
