using Cornerwright.Garage.Log;
using Cornerwright.Garage.Problems;
using Cornerwright.Storage;

namespace Cornerwright.Web.Jobs;

/// <summary>Keeps ticks in the car's log: each id once, whoever else saves the car meanwhile.</summary>
public static class TickKeeping
{
    /// <summary>Each try fails only because somebody else's save went through; so many in a row is a fault, not bad luck.</summary>
    private const int MostTries = 50;

    /// <returns>The job as it is then; or why the ticks were not kept, all or none.</returns>
    public static Checked<Job> Keep(IGarageStore store, string carId, string jobId, IReadOnlyList<Tick> ticks)
    {
        ArgumentNullException.ThrowIfNull(store);
        for (int i = 0; i < MostTries; i++)
        {
            var found = store.Load(carId);
            if (!found.Try(out var stored))
            {
                return Checked<Job>.Wrong(found.Problems);
            }

            if (stored.Car.Log.Job(jobId) is not { } job)
            {
                return Checked<Job>.Wrong(new Problem("job", jobId, string.Join(", ", stored.Car.Log.Jobs.Select(j => j.Id)),
                    "It was taken out of the log: begin it again from the work order."));
            }

            var after = TickMerge.Add(job, ticks);
            if (ReferenceEquals(after, job))
            {
                return Checked<Job>.From(job);
            }

            if (after.Ticks.Count > TickMerge.MostTicks)
            {
                return Checked<Job>.Wrong(new Problem("ticks", $"{after.Ticks.Count}", $"at most {TickMerge.MostTicks} in a job",
                    "Begin a new job for what is left."));
            }

            switch (store.Autosave(stored.Car with { Log = stored.Car.Log.With(after) }, stored.Mark, "job " + jobId))
            {
                case SaveResult.Conflict:
                    continue;
                case SaveResult.Refused refused:
                    return Checked<Job>.Wrong(refused.Problems);
                default:
                    return Checked<Job>.From(after);
            }
        }

        return Checked<Job>.Wrong(new Problem("car", carId, "a car that is not saved all the time", "Send the ticks again."));
    }
}
