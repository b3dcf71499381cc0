using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Shaftwright.App.Tests.Drawings;
using Shaftwright.JobFile;
using Shaftwright.JobFile.Exchange;
using Shaftwright.Length;

namespace Shaftwright.App.Tests.Api;

/// <summary>Slices of drawn cars over HTTP.</summary>
public class CarsTests
{
    private static JsonObject Plover =>
        JsonNode
            .Parse(
                File.ReadAllText(
                    Path.Combine(Samples.Repository, "examples/grass-track-left-rear.swjob.json")
                )
            )!
            .AsObject();

    [Fact]
    public async Task Cars_AskedForInSlices_AreTheBitsOfOneRunOnOneCore()
    {
        var cancel = TestContext.Current.CancellationToken;
        using var book = new TempBook();
        await using var served = await Served.Start(book.Folder);
        var cars = Workflow.Evaluate(JobJson.Read(Plover).Document!.Job).CarsDrawn(7)!;
        var all = cars.Blank();
        foreach (var (from, to) in ((long, long)[])[(300, 700), (0, 300)])
        {
            using var response = await served.Client.PostAsJsonAsync(
                new Uri(served.Address, "api/cars"),
                new CarsRequest(Plover, 7, from, to),
                ExchangeJson.Default.CarsRequest,
                cancel
            );
            Assert.Equal(HttpStatusCode.OK, response.StatusCode);
            var reply = await response.Content.ReadFromJsonAsync(
                ExchangeJson.Default.CarsReply,
                cancel
            );
            var slice = cars.Blank();
            Assert.True(CarsTally.TryRead(reply!.Tally, slice));
            all.Add(slice);
        }
        Assert.Equal(cars.Run(0, 700).ToText(), all.ToText());

        foreach (
            var (asked, says) in ((CarsRequest, string)[])
                [
                    (new(Plover, 7, 0, CarsRequest.Most + 1), "at most"),
                    (new(Plover, 7, 5, 4), "no slice"),
                    (new(new JsonObject { ["format"] = 1, ["name"] = "x" }, 7, 0, 10), "no length"),
                    (new(new JsonObject { ["format"] = 1, ["wheels"] = 3 }, 7, 0, 10), "wheels"),
                ]
        )
        {
            using var response = await served.Client.PostAsJsonAsync(
                new Uri(served.Address, "api/cars"),
                asked,
                ExchangeJson.Default.CarsRequest,
                cancel
            );
            Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
            Assert.Contains(
                says,
                await response.Content.ReadAsStringAsync(cancel),
                StringComparison.Ordinal
            );
        }
    }
}
