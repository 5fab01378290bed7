using System.Text.Json;
using OilCondition.Text;

namespace OilCondition;

/// <summary>Writes a decision as JSON: facts as numbers with units in their names, and the sentences beside them.</summary>
internal static class DecisionJson
{
    public static JsonOutput Of(TreatmentDecision decision) =>
        new(
            JsonFormat.Decision,
            json =>
            {
                json.WriteString("machine", decision.Assessment.History.Machine.Id);
                json.WriteMoment("asOf", decision.Assessment.Options.AsOf);
                Options(json, decision.DecisionOptions);
                json.WriteStartArray("subjects");
                foreach (var problem in decision.Problems)
                {
                    json.WriteStringValue(problem.Subject);
                }

                json.WriteEndArray();
                json.WriteString("recommendation", decision.Recommendation);
                json.WriteText("choice", decision.Choice?.Id);
                json.WriteMoment("riskDate", decision.RiskDate);
                json.WriteString("riskReason", decision.RiskReason);
                json.WriteText("missing", decision.Missing);
                json.WriteBoolean("underWay", decision.UnderWay is not null);
                json.WriteBoolean("metAlready", decision.IsMetAlready);
                Target(json, decision.Target);
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
                    json.WriteEvidence(figure.Item);
                    json.WriteSource("source", figure.Source);
                    json.WriteBoolean("assumed", figure.IsAssumed);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteCautions(decision.Cautions);
                json.WriteString("notice", TreatmentDecision.Notice);
            }
        );

    /// <summary>How it was made, as far as that changes the outcome.</summary>
    private static void Options(Utf8JsonWriter json, DecisionOptions options)
    {
        json.WriteStartObject("decisionOptions");
        json.WriteFigure("confidence", options.Confidence.DecimalFractions);
        json.WriteFigure("acceptedRisk", options.AcceptedRisk.DecimalFractions);
        json.WriteFigure("alarmResponseDays", options.AlarmResponse.TotalDays);
        json.WriteFigure("alertResponseDays", options.AlertResponse.TotalDays);
        json.WriteFigure("margin", options.Margin.DecimalFractions);
        json.WriteString("rule", options.Rule.Statement);
        json.WriteEndObject();
    }

    private static void Target(Utf8JsonWriter json, TargetProposal target)
    {
        json.WriteStartObject("target");
        json.WriteFigure("waterMgPerKg", target.Water?.PartsPerMillion);
        json.WriteText("waterSetBy", target.Bound is { } bound ? PlainText.Kebab(bound) : null);
        json.WriteFigure("saturationAtStandstillMgPerKg", target.Standstill?.Content.PartsPerMillion);
        json.WriteFigure("recordedTargetMgPerKg", target.StatedMgPerKg);
        json.WriteBoolean("standstillBreaksRecordedTarget", target.StandstillBreaksStated);
        json.WriteBoolean("standstillBreaksLimit", target.StandstillBreaksLimit);
        json.WriteText("code", target.Code?.ToString());
        json.WriteString("sentence", target.ToString());
        json.WriteEndObject();
    }

    private static void Option(Utf8JsonWriter json, TreatmentOption option)
    {
        json.WriteStartObject();
        json.WriteString("id", option.Id);
        json.WriteString("name", option.Name);
        json.WriteString("verdict", PlainText.Kebab(option.Verdict));
        json.WriteText("ruledOut", option.RuledOut);
        json.WriteText("plannedBy", option.Experience);
        json.WriteText("whyNot", option.WhyNot is { } reason ? PlainText.Kebab(reason) : null);
        json.WriteFigure("probability", option.Probability.DecimalFractions);
        json.WriteFigure("probabilityInTime", option.ProbabilityInTime.DecimalFractions);
        json.WriteMoment("begins", option.Begins);
        json.WriteMoment("doneP10", option.DoneP10);
        json.WriteMoment("doneP50", option.DoneP50);
        json.WriteMoment("doneP90", option.DoneP90);
        var band = option.Assessment?.Band;
        json.WriteFigure("hoursP10", band?.TimeP10?.TotalHours);
        json.WriteFigure("hoursP50", band?.TimeP50?.TotalHours);
        json.WriteFigure("hoursP90", band?.TimeP90?.TotalHours);
        json.WriteFigure("boundHours", option.Bound?.TotalHours);
        json.WriteFigure("floorP50MgPerKg", option.Floor?.PartsPerMillion);
        json.WriteFigure(
            "energyKilowattHours",
            (option.Assessment?.Heat + option.Assessment?.Electricity)?.KilowattHours
        );
        json.WriteFigure("elements", option.Assessment?.Elements);
        json.WriteFigure("newOilLitres", option.Assessment?.NewOil.Liters);
        json.WriteFigure("costP10", option.Cost?.P10);
        json.WriteFigure("costP50", option.Cost?.P50);
        json.WriteFigure("costP90", option.Cost?.P90);
        json.WriteText("currency", option.Cost?.Currency);
        json.WriteBoolean("costComplete", option.Cost?.IsComplete ?? false);
        json.WriteMoment("alertBack", option.Rebound is { } back && back.TryEstimate(out var at) ? at : null);
        json.WriteString("sentence", option.ToString());
        json.WriteEndObject();
    }

    private static void Waiting(Utf8JsonWriter json, WaitingOutlook waiting)
    {
        json.WriteStartObject("waiting");
        json.WriteFigure("freeWaterHoursSoFar", waiting.FreeWaterSoFar?.TotalHours);
        json.WriteFigure("freeIfStoppedHoursSoFar", waiting.FreeIfStoppedSoFar?.TotalHours);
        json.WriteStartArray("until");
        foreach (var step in waiting.Steps)
        {
            json.WriteStartObject();
            json.WriteString("name", step.Name);
            json.WriteMoment("at", step.At);
            json.WriteFigure("chanceOfAlert", step.ChanceOfAlert?.DecimalFractions);
            json.WriteFigure("chanceOfAlarm", step.ChanceOfAlarm?.DecimalFractions);
            json.WriteFigure("freeWaterHours", step.FreeWaterToCome?.TotalHours);
            json.WriteFigure("freeIfStoppedHours", step.FreeIfStoppedToCome?.TotalHours);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Sample(Utf8JsonWriter json, TreatmentDecision.SampleValue? sample)
    {
        if (sample is null)
        {
            return;
        }

        json.WriteStartObject("oneMoreSample");
        json.WriteFigure("changesChoiceIn", sample.ChangesIn.DecimalFractions);
        json.WriteString("sentence", sample.ToString());
        json.WriteEndObject();
    }
}
