using DeskCalculations;

// Desk calculations for the bearing oil of the invented station Harrow Point:
//   dotnet run --project examples/DeskCalculations
Console.OutputEncoding = System.Text.Encoding.UTF8;
Console.Write(Desk.Sheet());
