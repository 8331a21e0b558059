using Cornerwright.Storage;
using Cornerwright.Storage.KillVictim;

// Opens the database named by the first argument, waits for one line on standard input, then saves without end and
// prints each acknowledgement: how it was saved, revision, folds, and the step from which the document follows.
var store = new GarageStore(GarageDatabase.Open(args[0]).Value, TimeProvider.System, AutosaveRule.Default);
string session = Environment.ProcessId.ToString(System.Globalization.CultureInfo.InvariantCulture);
Warm(store);
Console.WriteLine("ready");
if (Console.ReadLine() != "go")
{
    return 2;
}

RevisionMark? mark = null;
int step = 0;
if (store.Load(VictimCar.Id).Try(out var stored))
{
    mark = stored.Mark;
    step = int.Parse(stored.Car.Note.AsSpan("step ".Length), System.Globalization.CultureInfo.InvariantCulture);
}

const int Most = 100_000;
const int AutosavesBetween = 3;
for (int i = 0; i < Most; i++)
{
    step++;
    var car = VictimCar.Of(step);
    var result = i % (AutosavesBetween + 1) == 0 ? store.Save(car, mark) : store.Autosave(car, mark, session);
    if (result.Mark is not { } now)
    {
        Console.Error.WriteLine(result);
        return 3;
    }

    mark = now;
    Console.WriteLine($"{(result is SaveResult.Saved ? "saved" : "kept")} {now.Number} {now.Fold} {step}");
}

return 0;

// The queries are compiled before the race begins; a car of another id does no harm.
static void Warm(GarageStore store)
{
    var car = VictimCar.Of(0) with { Id = "warm", Name = "Warm" };
    if (store.Save(car, null) is SaveResult.Unchanged { Now: var mark })
    {
        store.Save(car, mark);
    }
}
