using Shaftwright.App.Verbs;
using Shaftwright.JobFile;
using Shaftwright.JobFile.Exchange;
using Shaftwright.Length;

namespace Shaftwright.App.Api;

/// <summary>Slices of the cars that a length is judged on, run on every core of the laptop. Whoever asks holds the run together, so
/// progress is his, and a cancel is a request that is dropped.</summary>
internal static class CarsApi
{
    public static void Map(RouteGroupBuilder api) => api.MapPost("/cars", Run);

    private static async Task Run(HttpContext context)
    {
        if (await JsonBody.Read(context, ExchangeJson.Default.CarsRequest) is not { } asked)
            return;
        if (
            asked.From < 0
            || asked.To < asked.From
            || asked.To > LengthCars.MostCars
            || asked.To - asked.From > CarsRequest.Most
        )
        {
            await Troubles.Answer(
                context,
                StatusCodes.Status400BadRequest,
                $"Cars {asked.From} to {asked.To} are no slice.",
                $"0 ≤ from ≤ to ≤ {LengthCars.MostCars}, at most {CarsRequest.Most} at a time"
            );
            return;
        }
        var reading = JobJson.Read(asked.Job);
        if (reading.Document is not { } document)
        {
            await Troubles.Answer(
                context,
                StatusCodes.Status400BadRequest,
                string.Join(' ', reading.Refusals),
                "a job file as \"job\""
            );
            return;
        }
        if (Workflow.Evaluate(document.Job).CarsDrawn(asked.Seed) is not { } cars)
        {
            await Troubles.Answer(
                context,
                StatusCodes.Status400BadRequest,
                "This job has no length to judge yet.",
                "a job with readings at three heights"
            );
            return;
        }
        var tally = await Task.Run(
            () => CarsRun.Run(cars, asked.From, asked.To, context.RequestAborted),
            context.RequestAborted
        );
        context.Response.Headers.CacheControl = "no-store";
        await context.Response.WriteAsJsonAsync(
            new CarsReply(tally.ToText()),
            ExchangeJson.Default.CarsReply
        );
    }
}
