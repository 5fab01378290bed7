namespace OilCondition.LabFiles;

/// <summary>One particle size of a code: its reading, and its scale number where it has one.</summary>
internal readonly record struct CodeReading(Measurand Measurand, Reading Reading, int? Number);
