namespace OilCondition;

/// <summary>Facts that become words when somebody asks for them, in the language and units that are asked for.</summary>
/// <param name="say">The sentences of that language.</param>
internal delegate string Words(Sentences say);
