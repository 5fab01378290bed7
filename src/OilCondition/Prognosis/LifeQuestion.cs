namespace OilCondition.Prognosis;

/// <summary>What was asked: which readings, which limit, which model.</summary>
internal sealed record LifeQuestion(MeasurandSeries Series, double Limit, LimitSide Side, LifeModel Model);
