"""How many requests came from one caller in one stretch of time. `bucket` is a keyed hash and names nobody."""

from django.db import models


class RequestCount(models.Model):
    bucket = models.CharField(max_length=64)
    ends = models.DateTimeField(db_index=True)
    count = models.PositiveIntegerField()

    class Meta:
        constraints = [models.UniqueConstraint(fields=["bucket", "ends"], name="request_count_once_a_stretch")]

    def __str__(self) -> str:
        return f"{self.count} until {self.ends:%Y-%m-%d %H:%M:%S}"
